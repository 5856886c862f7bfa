package org.collarbook.compliance.fills;

import java.math.BigDecimal;

import org.collarbook.custody.Contents;
import org.jspecify.annotations.Nullable;

/** How it was found what is in a container after the fill. */
public sealed interface Measure {

    /** What was in it before, where that was told. */
    @Nullable
    BigDecimal heelLb();

    record Weighed(BigDecimal grossLb, @Nullable BigDecimal heelLb) implements Measure {}

    record Stated(BigDecimal netLb, @Nullable BigDecimal heelLb) implements Measure {}

    /** What was read, where that does not tell how much is in the container. */
    default Contents unknown(@Nullable BigDecimal temperatureF) {
        return switch (this) {
            case Weighed(var gross, var heel) -> Contents.unknown(gross, null, null, heel);
            case Stated(var net, var heel) -> Contents.stated(net, heel);
            case Metered(var gallons, var heel) -> Contents.unknown(null, gallons, temperatureF, heel);
        };
    }

    /** At 60 °F as a compensating meter counts, unless the liquid's temperature is told. */
    record Metered(BigDecimal gallons, BigDecimal heelLb) implements Measure {}
}
