package org.collarbook.intake;

import java.io.IOException;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.intake.ImportReports.LedgerLine;
import org.collarbook.intake.files.LedgerFiles;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
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
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.Part;

@RestController
@RequestMapping(path = "/api/imports", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Imports")
class ImportsController {

    /** What to do about rows that are refused: take the others, or none. */
    record CommitRequest(Imports.@Nullable OnRefused refused) {}

    private final Imports imports;
    private final ImportReports reports;
    private final DeclarationPart declarations;
    private final LedgerFiles files;
    private final ColumnMaps maps;
    private final Idempotency idempotency;
    private final Clock clock;

    ImportsController(Imports imports, ImportReports reports, DeclarationPart declarations, LedgerFiles files,
            ColumnMaps maps, Idempotency idempotency, Clock clock) {
        this.imports = imports;
        this.reports = reports;
        this.declarations = declarations;
        this.files = files;
        this.maps = maps;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    @Operation(summary = "Hand a ledger in and check it; the register does not change", description = """
            CSV (RFC 4180, UTF-8), the same gzipped, or a workbook (.xlsx). `sheet` names the sheet of a workbook, and
            `map` the column map that the file is read by; each is a part of its own or a query parameter.""")
    ResponseEntity<ImportReport> check(@RequestPart("ledger") MultipartFile ledger,
            @RequestPart(name = "declaration", required = false) @Nullable Part declaration,
            @RequestParam(required = false) @Nullable String map,
            @RequestParam(required = false) @Nullable String sheet,
            Caller caller) throws IOException {
        var said = declarations.read(declaration);
        var checked = said == null ? null : said.check(clock);
        var readBy = map == null || map.isBlank() ? null : maps.named(map.strip());
        try (var file = files.open(ledger.getInputStream(),
                sheet == null || sheet.isBlank() ? null : sheet)) {
            var report = imports.check(name(ledger), file, readBy, checked, caller.id());
            return ResponseEntity.created(URI.create("/api/imports/" + report.id()))
                    .eTag(new Revision(report.version()).etag()).body(report);
        }
    }

    private static String name(MultipartFile ledger) {
        var name = Shown.of(ledger.getOriginalFilename());
        return name == null || name.isBlank() ? "ledger.csv" : name;
    }

    @GetMapping("/{id}")
    @Operation(summary = "What became of a ledger")
    ResponseEntity<ImportReport> report(@PathVariable UUID id) {
        var report = find(id);
        return ResponseEntity.ok().eTag(new Revision(report.version()).etag()).body(report);
    }

    @GetMapping("/{id}/lines")
    @Operation(summary = "What became of each row of the latest pass, by the line it starts on")
    Page<LedgerLine> lines(@PathVariable UUID id, @RequestParam(required = false) Line.@Nullable Outcome outcome,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        return reports.lines(find(id), outcome, after(cursor), PageSize.of(size));
    }

    private static long after(@Nullable String text) {
        var cursor = Cursor.parse(text, 1);
        try {
            long line = cursor == null ? 0 : Long.parseLong(cursor.key().getFirst());
            if (line >= 0 && line < Long.MAX_VALUE / 2) {
                return line;
            }
        } catch (NumberFormatException forged) {
            // refused below, like a number that no line can have
        }
        throw Cursor.refused(String.valueOf(text));
    }

    @PostMapping(path = "/{id}/commit", consumes = MediaType.APPLICATION_JSON_VALUE)
    @Operation(summary = "Load a checked ledger into the register, all in one transaction")
    ResponseEntity<?> commit(@PathVariable UUID id, @RequestBody CommitRequest request, Caller caller,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key) {
        var onRefused = request.refused();
        if (onRefused == null) {
            throw Problem.invalid(List.of(FieldError.missing("/refused", "SKIP: load the other rows;"
                    + " ABORT: load nothing when a row is refused"))).asException();
        }
        return idempotency.requireOnce(key, caller.id(), "POST /api/imports/" + id + "/commit",
                Map.of("refused", onRefused), () -> {
                    var report = imports.commit(id, ifMatch, onRefused, caller.id());
                    return ResponseEntity.ok().eTag(new Revision(report.version()).etag()).body(report);
                });
    }

    private ImportReport find(UUID id) {
        return reports.find(id).orElseThrow(() -> Problem.notFound("import").asException());
    }
}
