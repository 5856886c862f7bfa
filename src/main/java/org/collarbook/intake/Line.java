package org.collarbook.intake;

import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** One row on its way through a pass. */
final class Line {

    /** What became of a row. */
    enum Outcome {
        NEW,
        CHANGED,
        UNCHANGED,
        REFUSED
    }

    private final long number;
    private final Problems problems;
    private final @Nullable LedgerEntry entry;
    private final @Nullable UUID key;
    private Outcome outcome = Outcome.REFUSED;

    Line(LedgerRow row, EntryReader reader) {
        number = row.line();
        problems = row.problems();
        entry = reader.read(row, problems);
        key = entry == null ? null : Claims.digest(entry.key());
    }

    /** Where the row starts in the file. */
    long number() {
        return number;
    }

    Problems problems() {
        return problems;
    }

    /** What is still to be fitted into the register; null for a row that was refused. */
    @Nullable
    LedgerEntry entry() {
        return problems.areRefusing() ? null : entry;
    }

    /** The digest of its natural key; null where its marks make no sense. */
    @Nullable
    UUID key() {
        return key;
    }

    void became(Outcome what) {
        outcome = what;
    }

    Outcome outcome() {
        return outcome;
    }
}
