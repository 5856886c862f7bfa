package org.collarbook.intake;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.security.DigestInputStream;
import java.time.Clock;
import java.util.EnumSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.intake.ImportLines.LedgerLine;
import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.intake.Line.Outcome;
import org.collarbook.intake.files.LedgerFiles;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.LongAnswers;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.platform.Sha256;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RequestPart;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.Part;

import io.swagger.v3.oas.annotations.media.Schema;

@RestController
@RequestMapping(path = "/api/imports", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Imports")
class ImportsController {

    /** What to do about rows that are not taken: load the others, or none. */
    @Schema(requiredProperties = "refused")
    record CommitRequest(Imports.@Nullable OnRefused refused) {}

    private final Imports imports;
    private final ImportReports reports;
    private final ImportLines lines;
    private final LinesToMend toMend;
    private final DeclarationPart declarations;
    private final LedgerFiles files;
    private final ColumnMaps maps;
    private final LedgerJobs jobs;
    private final Idempotency idempotency;
    private final Clock clock;

    private final LongAnswers longAnswers;

    ImportsController(Imports imports, ImportReports reports, ImportLines lines, LinesToMend toMend,
            DeclarationPart declarations, LedgerFiles files, ColumnMaps maps, LedgerJobs jobs, Idempotency idempotency,
            Clock clock, LongAnswers longAnswers) {
        this.longAnswers = longAnswers;
        this.imports = imports;
        this.reports = reports;
        this.lines = lines;
        this.toMend = toMend;
        this.declarations = declarations;
        this.files = files;
        this.maps = maps;
        this.jobs = jobs;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    @Operation(summary = "Hand a ledger in, to be checked; the register does not change", description = """
            CSV (RFC 4180, UTF-8), the same gzipped, or a workbook (.xlsx). `sheet` names the sheet of a workbook, and \
            `map` the column map that the file is read by; each is a part of its own or a query parameter. \
            A file that cannot be read to its end, or whose header cannot be accepted, is refused at once and not kept. \
            Any other is checked in the background: follow `Location` until it is `CHECKED`. Each row then has an \
            outcome: `NEW`, `CHANGED`, `UNCHANGED`; `REFUSED`, where a cell cannot be accepted, the site contradicts \
            what is known, the container was merged into another, or an earlier line says the same; `AMBIGUOUS`, where \
            the row could mean more than one thing: a stamp has several readings (`AMBIGUOUS_…`), maker or month is \
            left out and another container may be the one (`MAY_BE_ANOTHER`), an earlier line has the same marks and says \
            otherwise (`TWICE_IN_FILE`), or the tag is another container's (`TAG_IN_USE`). Only what is taken casts doubt on \
            later rows.""")
    @ApiResponse(responseCode = "202", description = "Accepted", content = @Content(schema = @Schema(implementation = ImportReport.class)))
    ResponseEntity<?> handIn(@RequestPart("ledger") MultipartFile ledger,
            @RequestPart(name = "declaration", required = false) @Nullable Part declaration,
            @RequestParam(required = false) @Nullable String map,
            @RequestParam(required = false) @Nullable String sheet,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller,
            HttpServletRequest request) throws IOException, ServletException {
        LedgerParts.require(request);
        var said = declarations.read(declaration);
        var checked = said == null ? null : said.check(clock);
        var readBy = map == null || map.isBlank() ? null : maps.named(map.strip());
        var asked = new Asked(key == null ? null : sha256(ledger), said, map, sheet);
        var answer = idempotency.once(key, caller.id(), "POST /api/imports", asked, () -> {
            try (var file = files.open(ledger.getInputStream(), sheet == null || sheet.isBlank() ? null : sheet)) {
                return accepted(imports.handIn(name(ledger), file, readBy, checked, caller.id()));
            } catch (IOException unreadable) {
                throw new UncheckedIOException(unreadable);
            }
        });
        jobs.start(Purpose.CHECK);
        return answer;
    }

    /** What makes one handing in the same as another; the name of the file does not. */
    private record Asked(@Nullable String sha256, @Nullable DeclarationRequest declaration, @Nullable String map,
            @Nullable String sheet) {}

    private static String sha256(MultipartFile ledger) throws IOException {
        try (var content = new DigestInputStream(ledger.getInputStream(), Sha256.start())) {
            content.transferTo(OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(content.getMessageDigest().digest());
        }
    }

    private static ResponseEntity<ImportReport> accepted(ImportReport report) {
        return ResponseEntity.accepted().location(URI.create("/api/imports/" + report.id()))
                .eTag(new Revision(report.version()).etag()).body(report);
    }

    private static String name(MultipartFile ledger) {
        var name = Shown.of(ledger.getOriginalFilename());
        return name == null || name.isBlank() ? "ledger.csv" : name;
    }

    @GetMapping("/{id}")
    @Operation(summary = "How far a ledger is, and what became of its rows", description = """
            `progress` is that of the latest pass, the check or a commit. `rows` adds up: `read` is the sum of the others. \
            `committedThroughLine`: the rows that start on or before this line are in the register, as far as they are \
            taken.""")
    ResponseEntity<ImportReport> report(@PathVariable UUID id) {
        var report = reports.known(id);
        return ResponseEntity.ok().eTag(new Revision(report.version()).etag()).body(report);
    }

    @GetMapping("/{id}/lines")
    @Operation(summary = "What became of each row, by the line it starts on", description = "Of the pass that `rowsOf` names.")
    Page<LedgerLine> lines(@PathVariable UUID id, @RequestParam(required = false) Line.@Nullable Outcome outcome,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var outcomes = outcome == null ? EnumSet.allOf(Outcome.class) : EnumSet.of(outcome);
        return lines.page(ImportLines.told(reports.known(id)), outcomes, after(cursor), PageSize.of(size));
    }

    @GetMapping(path = "/{id}/lines", produces = "text/csv")
    @Operation(summary = "The rows that are not taken, as a ledger to be mended and handed in again (also by ?format=csv)", description = """
            The file's own header and rows as they were handed in, with two columns more, `problem_line` and `problems`, \
            which a ledger may have and nobody reads. Refused and ambiguous rows, or those with the `outcome` asked for. \
            A cell that a spreadsheet would run as a formula has an apostrophe before it, which is taken off again.""")
    void linesToMend(@PathVariable UUID id, @RequestParam(required = false) Line.@Nullable Outcome outcome,
            HttpServletRequest request, HttpServletResponse response) throws IOException {
        var outcomes = outcome == null ? EnumSet.of(Outcome.REFUSED, Outcome.AMBIGUOUS) : EnumSet.of(outcome);
        var pass = ImportLines.told(reports.known(id));
        longAnswers.send(request, () -> {
            response.setContentType("text/csv;charset=UTF-8");
            response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"to-mend.csv\"");
            toMend.write(id, pass, outcomes, response.getOutputStream());
        });
    }

    private static long after(@Nullable String text) {
        var line = Cursor.parseNumber(text);
        return line == null ? 0 : line;
    }

    @PostMapping(path = "/{id}/commit", consumes = MediaType.APPLICATION_JSON_VALUE)
    @ApiResponse(responseCode = "202", description = "Accepted")
    @Operation(summary = "Load a checked ledger into the register", description = """
            `ABORT`: all rows or none, in one transaction; where a row turns out not to be taken it ends as `FAILED` with \
            `ROWS_REFUSED`, and nothing is stored. `SKIP`: the rows that are taken, in pieces; a commit that was \
            interrupted goes on where it stopped. Loaded in the background: follow `Location` until it is `COMMITTED`. \
            After one that failed or was cancelled it may be asked for again: what is stored comes out as \
            `UNCHANGED`.""")
    ResponseEntity<?> commit(@PathVariable UUID id, @RequestBody CommitRequest request, Caller caller,
            @Parameter(required = true) @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Parameter(required = true) @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key) {
        var onRefused = request.refused();
        if (onRefused == null) {
            throw Problem.invalid(List.of(FieldError.missing("/refused", "SKIP: load the other rows;"
                    + " ABORT: load nothing when a row is refused or ambiguous"))).asException();
        }
        var answer = idempotency.requireOnce(key, caller.id(), "POST /api/imports/" + id + "/commit",
                Map.of("refused", onRefused), () -> accepted(imports.commit(id, ifMatch, onRefused, caller.id())));
        jobs.start(Purpose.COMMIT);
        return answer;
    }

    @PostMapping("/{id}/cancel")
    @Operation(summary = "Cancel the check or the commit of a ledger that waits or is under way", description = """
            What pieces of a commit are stored stay, and `committedThroughLine` tells through which line; there is none \
            where nothing was stored.""")
    ResponseEntity<?> cancel(@PathVariable UUID id,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        return idempotency.once(key, caller.id(), "POST /api/imports/" + id + "/cancel", "", () -> {
            var report = imports.cancel(id);
            return ResponseEntity.ok().eTag(new Revision(report.version()).etag()).body(report);
        });
    }
}
