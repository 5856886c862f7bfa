package org.collarbook.intake;

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
    private final Problems problems = new Problems();
    private final @Nullable LedgerEntry entry;
    private Outcome outcome = Outcome.REFUSED;

    Line(LedgerRow row, EntryReader reader) {
        number = row.line();
        entry = reader.read(row, problems);
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

    void became(Outcome what) {
        outcome = what;
    }

    Outcome outcome() {
        return outcome;
    }
}
