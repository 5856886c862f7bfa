package org.collarbook.intake;

import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.intake.LedgerPasses.Purpose;
import org.collarbook.platform.jobs.JobStatus;
import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonProperty;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * How far a ledger is that was handed in, and what became of its rows. {@code pass} is the latest that was asked for, with
 * its progress and failure. Counts and problems are those of the check until a commit has stored something and is over;
 * {@code rowsOf} says which.
 */
record ImportReport(UUID id, State state, Purpose pass, String fileName, String sha256, long bytes, Progress progress,
        @Nullable Failure failure, @Nullable Purpose rowsOf, @Nullable Rows rows,
        @Nullable Long committedThroughLine, List<LineProblem> problems, @Nullable Declared declaration,
        @Nullable String sheet, @Nullable ReadBy columnMap, String ruleBook, Instant createdAt,
        @Nullable Instant committedAt, @JsonIgnore UUID latestPass,
        @JsonIgnore @Nullable UUID toldPass, @JsonIgnore int version) {

    enum State {
        WAITING_FOR_CHECK,
        CHECKING,
        CHECKED,
        WAITING_FOR_COMMIT,
        COMMITTING,
        COMMITTED,
        FAILED,
        CANCELLED;

        static State of(Purpose pass, JobStatus status) {
            boolean isCheck = pass == Purpose.CHECK;
            return switch (status) {
                case QUEUED -> isCheck ? WAITING_FOR_CHECK : WAITING_FOR_COMMIT;
                case RUNNING -> isCheck ? CHECKING : COMMITTING;
                case DONE -> isCheck ? CHECKED : COMMITTED;
                case FAILED -> FAILED;
                case CANCELLED -> CANCELLED;
            };
        }
    }

    /** Of the latest pass: what it has gone through, of how much. */
    @Schema(name = "ImportProgress")
    record Progress(long rows, long bytes, long ofBytes, int attempt) {}

    @Schema(name = "ImportFailure")
    record Failure(String code, String detail) {}

    /** {@code read} is the sum of the others. */
    record Rows(long read, @JsonProperty("new") long fresh, long changed, long unchanged, long refused,
            long ambiguous) {

        static Rows from(Counts counts) {
            return new Rows(counts.read(), counts.fresh(), counts.changed(), counts.unchanged(), counts.refused(),
                    counts.ambiguous());
        }

        @JsonIgnore
        long notTaken() {
            return refused + ambiguous;
        }
    }

    /** One problem and the line it is on. */
    record LineProblem(long line, String column, String code, boolean refuses, @Nullable String found,
            String accepted) {}

    /** The column map that the file is read by, in the version of the day on which it was handed in. */
    record ReadBy(String name, int version) {}

    record Declared(UUID id, String by, LocalDate on) {}

    ImportReport with(List<LineProblem> first) {
        return new ImportReport(id, state, pass, fileName, sha256, bytes, progress, failure, rowsOf, rows,
                committedThroughLine, first, declaration, sheet, columnMap, ruleBook, createdAt, committedAt,
                latestPass, toldPass,
                version);
    }

    @JsonIgnore
    boolean canBeCommitted() {
        return switch (state) {
            case CHECKED -> true;
            case FAILED, CANCELLED -> pass == Purpose.COMMIT;
            case WAITING_FOR_CHECK, CHECKING, WAITING_FOR_COMMIT, COMMITTING, COMMITTED -> false;
        };
    }

    private boolean canBeCancelled() {
        return switch (state) {
            case WAITING_FOR_CHECK, CHECKING, WAITING_FOR_COMMIT, COMMITTING -> true;
            case CHECKED, COMMITTED, FAILED, CANCELLED -> false;
        };
    }

    @JsonProperty
    Map<String, String> links() {
        var self = "/api/imports/" + id;
        var links = new LinkedHashMap<String, String>();
        links.put("self", self);
        if (toldPass != null) {
            links.put("lines", self + "/lines");
            links.put("refused", self + "/lines?outcome=REFUSED");
            links.put("ambiguous", self + "/lines?outcome=AMBIGUOUS");
            links.put("toMend", self + "/lines?format=csv");
        }
        if (canBeCommitted()) {
            links.put("commit", self + "/commit");
        }
        if (canBeCancelled()) {
            links.put("cancel", self + "/cancel");
        }
        return links;
    }
}
