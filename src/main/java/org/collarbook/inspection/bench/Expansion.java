package org.collarbook.inspection.bench;

import java.math.BigDecimal;

/** What a volumetric expansion test measures, in cubic centimetres. */
public record Expansion(BigDecimal total, BigDecimal permanent) {

    public Expansion {
        if (total.signum() <= 0 || permanent.signum() < 0 || permanent.compareTo(total) > 0) {
            throw new IllegalArgumentException("expansion of " + total + " cm3, " + permanent + " cm3 of it permanent:"
                    + " expected more than nothing, and a permanent part of at most all");
        }
    }

    public BigDecimal elastic() {
        return total.subtract(permanent);
    }
}
