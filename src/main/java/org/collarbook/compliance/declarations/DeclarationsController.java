package org.collarbook.compliance.declarations;

import java.net.URI;
import java.time.Clock;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.declarations.DeclarationAnswer.AccountedDeclaration;
import org.collarbook.platform.Caution;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import tools.jackson.databind.json.JsonMapper;

@RestController
@RequestMapping(path = "/api/declarations", produces = "application/json")
@Tag(name = "Containers")
class DeclarationsController {

    private static final String PATH = "/api/declarations";

    private final GroupDeclarations declarations;
    private final PreviewDeclaration preview;
    private final DeclarationReport report;
    private final DeclarationSweep sweep;
    private final Idempotency idempotency;
    private final JsonMapper json;
    private final Clock clock;

    DeclarationsController(GroupDeclarations declarations, PreviewDeclaration preview, DeclarationReport report,
            DeclarationSweep sweep, Idempotency idempotency, JsonMapper json, Clock clock) {
        this.declarations = declarations;
        this.preview = preview;
        this.report = report;
        this.sweep = sweep;
        this.idempotency = idempotency;
        this.json = json;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Declare facts for a group of containers, by a named person on a day", description = """
            A declared fact fills what is unknown, and is told as declared with by whom and when; what is read or \
            recorded stays. `group` is fixed at this moment: the containers that meet every condition, of which one at \
            least is named, or `everything: true` for the whole register. The first are done with the answer, the rest \
            in short transactions after it; `state` and `GET /api/declarations/{id}` tell how far it is. What \
            `jurisdiction` says counts only while no site tells it. Look at `POST /api/declarations/previews` first: \
            declared is not seen, and containers become fillable by it.""")
    ResponseEntity<?> declare(@RequestBody DeclareRequest request,
            @Parameter(required = true) @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key,
            Caller caller) {
        var read = request.read(clock);
        declarations.refuseUnknown(read.group());
        var answer = idempotency.requireOnce(key, caller.id(), "POST " + PATH, request, () -> {
            var made = declarations.record(read.declaration(), read.group(), json.writeValueAsString(request.group()),
                    caller);
            return ResponseEntity.created(URI.create(PATH + "/" + made.id())).body(accounted(made));
        });
        return goOn(answer);
    }

    @PostMapping("/previews")
    @Operation(summary = "What would a declaration do? Nothing is stored", description = """
            The same request as `POST /api/declarations`. `filled`, `known` and `contradicting` count containers; those \
            that say otherwise keep what they have, and the first 100 are listed. `fillable` and the statuses are what \
            the rules say today, before and after it.""")
    PreviewAnswer preview(@RequestBody DeclareRequest request) {
        var read = request.read(clock);
        declarations.refuseUnknown(read.group());
        return preview.of(read.declaration(), read.group());
    }

    @GetMapping
    @Operation(summary = "Declarations for groups by pages, the latest first")
    Page<DeclarationAnswer> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rows = PageSize.of(size);
        return Page.of(declarations.page(Cursor.parseId(cursor), rows), rows, one -> Cursor.after(one.id()))
                .map(page -> page.stream().map(this::answer).toList());
    }

    @GetMapping("/{id}")
    @Operation(summary = "A declaration for a group, how far it is carried out, and by pages which say otherwise")
    AccountedDeclaration one(@PathVariable UUID id, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return accounted(declarations.require(id), Cursor.parseId(cursor), PageSize.of(size));
    }

    @PostMapping("/{id}/withdrawal")
    @Operation(summary = "Withdraw a declaration that was a mistake", description = """
            The facts that still rest on it become unknown again, as recorded changes; what was read since stays.""")
    ResponseEntity<?> withdraw(@PathVariable UUID id, @RequestBody WithdrawalRequest request,
            @Parameter(required = true) @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key,
            Caller caller) {
        var reason = request.read();
        declarations.require(id);
        return goOn(idempotency.requireOnce(key, caller.id(), "POST " + PATH + "/" + id + "/withdrawal", request,
                () -> ResponseEntity.ok(accounted(declarations.withdraw(id, reason, caller)))));
    }

    /** A repeat has nothing left to do. */
    private ResponseEntity<?> goOn(ResponseEntity<?> answer) {
        if (answer.getBody() instanceof AccountedDeclaration made) {
            sweep.start(made.declaration().id());
        }
        return answer;
    }

    private AccountedDeclaration accounted(GroupDeclaration declared) {
        return accounted(declared, null, PageSize.of(null));
    }

    private AccountedDeclaration accounted(GroupDeclaration declared, @Nullable UUID after, PageSize rows) {
        var id = declared.id();
        var contradictions = Page.of(report.contradictions(id, after, rows), rows,
                one -> Cursor.after(one.container()));
        return new AccountedDeclaration(answer(declared), report.counts(id), report.facts(id), contradictions,
                Caution.TEXT);
    }

    private DeclarationAnswer answer(GroupDeclaration declared) {
        return DeclarationAnswer.from(declared, json.readValue(declared.told(), GroupRequest.class));
    }

    @Schema(name = "DeclarationWithdrawalRequest", requiredProperties = "reason")
    record WithdrawalRequest(@Nullable String reason) {

        String read() {
            var inputs = new Inputs();
            var why = inputs.required("/reason", reason, 1000);
            inputs.done();
            return String.valueOf(why);
        }
    }
}
