package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.Period;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** How long each kind of record is kept at least. The register itself deletes nothing. */
public record Retention(List<Kept> records) {

    public enum RecordKind {
        REQUALIFICATION,
        TANK_TEST,
        REPAIR,
        TRANSPORT,
        TRAINING,
        FILL,
        MOVEMENT,
        HOLD,
        PART,
        OUT_OF_SERVICE
    }

    /** {@code period} is null where no number of years is named; {@code citation} where no regulation was found. */
    public record Kept(RecordKind record, @Nullable Period period, String until, @Nullable Citation citation) {}

    public Retention {
        records = List.copyOf(records);
    }

    public Kept of(RecordKind record) {
        return records.stream().filter(kept -> kept.record() == record).findFirst().orElseThrow();
    }

    /** The last day of a record of that day, or null where its end hangs on something else. */
    public @Nullable LocalDate keepUntil(RecordKind record, LocalDate day) {
        Period period = of(record).period();
        return period == null ? null : day.plus(period);
    }
}
