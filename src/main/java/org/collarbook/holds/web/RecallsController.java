package org.collarbook.holds.web;

import java.net.URI;
import java.time.Clock;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.holds.Recall;
import org.collarbook.holds.RecallReport;
import org.collarbook.holds.RecallSweep;
import org.collarbook.holds.RecalledContainer.Outcome;
import org.collarbook.holds.Recalls;
import org.collarbook.holds.web.RecallResponse.AccountedRecall;
import org.collarbook.holds.web.RecallResponse.ConcernedContainer;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
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
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/recalls", produces = "application/json")
@Tag(name = "Holds")
class RecallsController {

    private final Recalls recalls;
    private final RecallReport report;
    private final RecallSweep sweep;
    private final Idempotency idempotency;
    private final Clock clock;

    RecallsController(Recalls recalls, RecallReport report, RecallSweep sweep, Idempotency idempotency, Clock clock) {
        this.recalls = recalls;
        this.report = report;
        this.sweep = sweep;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Record a recall: what matches it is held, now and when it is registered later", description = """
            `maker` is asked for, since a serial number or a lot says nothing without it. The register knows no lots: \
            a lot is told with each hold and narrows nothing. Serials are compared when they have the same characters \
            before the number at their end, and as many digits; those that cannot be compared are NOT_COMPARED and \
            not held. The answer accounts for the first containers; many are held before it comes back, and \
            `GET /api/recalls/{id}` counts them.""")
    ResponseEntity<?> record(@RequestBody RecallRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var found = request.read(clock.instant());
        var answer = idempotency.once(key, caller.id(), "POST /api/recalls", request, () -> {
            var recall = recalls.record(found, caller);
            return ResponseEntity.created(URI.create("/api/recalls/" + recall.id()))
                    .body(accounted(recall, null, null, PageSize.of(null)));
        });
        // a repeat has nothing left to hold
        if (answer.getBody() instanceof AccountedRecall(var recall, var _, var _)) {
            sweep.start(recall.id());
        }
        return answer;
    }

    @GetMapping
    @Operation(summary = "Recalls by pages, the latest first")
    Page<RecallResponse> list(@RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rows = PageSize.of(size);
        return Page.of(recalls.page(Cursor.parseId(cursor), rows), rows, recall -> Cursor.after(recall.id()))
                .map(page -> page.stream().map(RecallResponse::from).toList());
    }

    @GetMapping("/{id}")
    @Operation(summary = "A recall, how many containers it concerns, and by pages which", description = """
            `outcome` chooses among HELD, LIFTED, MATCHED (no hold yet, or registered after its end) and \
            NOT_COMPARED, whose `unknown` names the marks that could not be compared.""")
    AccountedRecall one(@PathVariable UUID id, @RequestParam(required = false) @Nullable String outcome,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var inputs = new Inputs();
        var chosen = inputs.word("outcome", outcome, Outcome.class);
        inputs.done();
        return accounted(known(id), chosen, Cursor.parseId(cursor), PageSize.of(size));
    }

    private AccountedRecall accounted(Recall recall, @Nullable Outcome outcome, @Nullable UUID after, PageSize rows) {
        var containers = Page.of(report.containers(recall.id(), outcome, after, rows), rows,
                one -> Cursor.after(one.id()))
                .map(page -> page.stream().map(ConcernedContainer::from).toList());
        return new AccountedRecall(RecallResponse.from(recall), report.counts(recall.id()), containers);
    }

    @PostMapping("/{id}/end")
    @Operation(summary = "End a recall: nothing more is held; what it holds stays held until each hold is lifted")
    ResponseEntity<?> end(@PathVariable UUID id, @RequestBody RecallEndRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var reason = request.read();
        var recall = known(id);
        return idempotency.once(key, caller.id(), "POST /api/recalls/" + id + "/end", request,
                () -> ResponseEntity.ok(RecallResponse.from(recalls.end(recall, reason, caller))));
    }

    private Recall known(UUID id) {
        return recalls.find(id).orElseThrow(() -> Problem.notFound("recall").asException());
    }
}
