package org.collarbook.compliance.fills;

import java.math.BigDecimal;

import org.jspecify.annotations.Nullable;

/** How it was found what is in a container after the fill. */
sealed interface Measure {

    record Weighed(BigDecimal grossLb, @Nullable BigDecimal heelLb) implements Measure {}

    record Stated(BigDecimal netLb, @Nullable BigDecimal heelLb) implements Measure {}

    /** At 60 °F as a compensating meter counts, unless the liquid's temperature is told. */
    record Metered(BigDecimal gallons, BigDecimal heelLb) implements Measure {}
}
