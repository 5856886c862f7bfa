package org.collarbook.inspection;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.inspection.bench.Attempt;
import org.collarbook.inspection.bench.Checked;
import org.collarbook.inspection.bench.CondemningGround;
import org.collarbook.inspection.bench.Expansion;
import org.collarbook.inspection.bench.Remark;
import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/**
 * A requalification as it is on record. {@code sheet} is null where no more than the mark is known, {@code corrected}
 * where it stands; {@code correcting} says which entry it took the place of.
 */
public record RecordedTest(UUID id, UUID containerId, Requalification requalification,
        @Nullable LocalDate performedOn, @Nullable String asStamped, @Nullable Sheet sheet,
        @Nullable Correcting correcting, @Nullable Corrected corrected, Instant recordedAt, UUID recordedBy) {

    /** The full contents beside the mark. */
    public record Sheet(Requalifier.@Nullable Named requalifier, List<Checked> visual,
            @Nullable Integer markedPressurePsig, @Nullable Integer testPressurePsig,
            @Nullable BigDecimal minimumPsig, @Nullable Expansion expansion, @Nullable BigDecimal permanentPercent,
            @Nullable BigDecimal limitPercent, List<Attempt> repeats, @Nullable String coating,
            @Nullable String owner, String operator, @Nullable BigDecimal tareLb,
            @Nullable BigDecimal tareLossPercent, List<CondemningGround> grounds, @Nullable String disposition,
            @Nullable String note,
            List<Remark> remarks) {}

    /** It takes the place of that entry, and why. */
    public record Correcting(UUID entry, String reason) {}

    /** The day, or the first of the month where only that is known: what the list is sorted by. */
    public LocalDate day() {
        return performedOn == null ? requalification.month().atDay(1) : performedOn;
    }
}
