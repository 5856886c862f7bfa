package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/**
 * A record as it was filled in, well formed and complete for its method; the result is not among it, for that is
 * computed. {@code limitPercent} is the limit of permanent expansion where no DOT specification gives it.
 */
public record TestSheet(LocalDate performedOn, Method method, @Nullable Rin rin, boolean star, boolean plus,
        List<Checked> visual, @Nullable Integer markedPressurePsig, @Nullable Integer testPressurePsig,
        @Nullable Expansion expansion, @Nullable BigDecimal limitPercent, List<Attempt> repeats,
        @Nullable String coating, @Nullable String owner, String operator, @Nullable BigDecimal tareLb,
        List<CondemningGround> grounds, @Nullable String disposition, @Nullable String note) {

    public TestSheet {
        visual = List.copyOf(visual);
        repeats = List.copyOf(repeats);
        grounds = List.copyOf(grounds);
    }

    public YearMonth month() {
        return YearMonth.from(performedOn);
    }

    /** One of the two whose pressure 49 CFR 180.209(a) Table 1 gives. */
    boolean isPressureTest() {
        return method == Method.VOLUMETRIC_EXPANSION || method == Method.PROOF_PRESSURE;
    }

    boolean hasDefect() {
        return visual.stream().anyMatch(one -> one.finding() == Checked.Finding.DEFECT);
    }

    boolean hasDefectIn(VisualItem item) {
        return visual.stream().anyMatch(one -> one.isDefectIn(item));
    }
}
