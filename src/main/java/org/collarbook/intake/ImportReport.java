package org.collarbook.intake;

import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;

/** What became of a ledger handed in; the counts and problems are those of its latest pass. */
record ImportReport(UUID id, State state, String fileName, String sha256, long bytes, Rows rows,
        List<LineProblem> problems, @Nullable Declared declaration, @Nullable String sheet,
        @Nullable ReadBy columnMap, String ruleBook, Instant createdAt,
        @Nullable Instant committedAt, @JsonIgnore int version) {

    enum State {
        CHECKED,
        COMMITTED
    }

    record Rows(long read, @JsonProperty("new") long fresh, long changed, long unchanged, long refused) {}

    /** One problem and the line it is on. */
    record LineProblem(long line, String column, String code, boolean refuses, @Nullable String found,
            String accepted) {}

    /** The column map that the file is read by, in the version of the day on which it was handed in. */
    record ReadBy(String name, int version) {}

    record Declared(UUID id, String by, LocalDate on) {}

    LedgerPasses.Purpose latestPass() {
        return state == State.CHECKED ? LedgerPasses.Purpose.CHECK : LedgerPasses.Purpose.COMMIT;
    }

    ImportReport with(List<LineProblem> first) {
        return new ImportReport(id, state, fileName, sha256, bytes, rows, first, declaration, sheet, columnMap,
                ruleBook, createdAt,
                committedAt, version);
    }

    @JsonProperty
    Map<String, String> links() {
        var links = new LinkedHashMap<String, String>();
        links.put("self", "/api/imports/" + id);
        links.put("lines", "/api/imports/" + id + "/lines");
        links.put("refused", "/api/imports/" + id + "/lines?outcome=REFUSED");
        if (state == State.CHECKED) {
            links.put("commit", "/api/imports/" + id + "/commit");
        }
        return links;
    }
}
