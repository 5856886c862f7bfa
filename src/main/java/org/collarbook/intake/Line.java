package org.collarbook.intake;

import java.util.Objects;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** One row on its way through a pass. */
final class Line {

    /** What became of a row. */
    enum Outcome {
        NEW,
        CHANGED,
        UNCHANGED,
        /** It cannot be accepted as it stands. */
        REFUSED,
        /** It could mean more than one thing; nobody guesses which. */
        AMBIGUOUS;

        boolean isTaken() {
            return switch (this) {
                case NEW, CHANGED, UNCHANGED -> true;
                case REFUSED, AMBIGUOUS -> false;
            };
        }
    }

    private final long number;
    private final Problems problems;
    private final @Nullable LedgerEntry entry;
    private final @Nullable UUID digest;
    private final @Nullable String status;
    private final int content;
    private @Nullable Outcome outcome;

    Line(LedgerRow row, EntryReader reader) {
        number = row.line();
        problems = row.problems();
        entry = reader.read(row, problems);
        status = row.get(LedgerColumn.STATUS);
        digest = entry == null ? null : Claims.digest(entry.key());
        content = entry == null ? 0 : entry.content();
    }

    /** Where the row starts in the file. */
    long number() {
        return number;
    }

    Problems problems() {
        return problems;
    }

    /** What is to be fitted into the register; null for a row that makes no sense by itself. */
    @Nullable
    LedgerEntry entry() {
        return entry;
    }

    /** What all containers with these marks share, but for maker and month; of a row that makes sense. */
    UUID digest() {
        return Objects.requireNonNull(digest);
    }

    /** The same for two rows that say the same of one container. */
    int content() {
        return content;
    }

    /** Of a row that is not taken, that what it says keeps a container out of service is not recorded. */
    void tellWhatIsLost() {
        if (problems.areKeepingOut() && status != null && !status.strip().equalsIgnoreCase(StatusReader.IN_SERVICE)) {
            problems.remark(LedgerColumn.STATUS, "STATUS_NOT_TAKEN", status, "a hold placed by hand until the row is"
                    + " mended: the register does not know of it, and may allow a fill");
        }
    }

    void became(Outcome what) {
        outcome = what;
    }

    Outcome outcome() {
        return problems.areKeepingOut() ? problems.outcome() : Objects.requireNonNull(outcome);
    }
}
