package org.collarbook.regulation;

import java.math.BigDecimal;

/** Of the liquid at 60 °F against water at 60 °F, as the filling density tables ask for it. */
public final class SpecificGravity {

    public static final String EXPECTED = "the specific gravity of the liquid at 60 °F, between 0 and 1 with at most 4"
            + " decimals, such as 0.508";
    private static final int MOST_DECIMALS = 4;

    private SpecificGravity() {}

    /** Whether it can be one at all; what a table holds is another question. */
    public static boolean isPlausible(BigDecimal gravity) {
        // the scale first: a number such as 1e-999999999 is not to be written out
        return gravity.scale() >= 0 && gravity.precision() - gravity.scale() <= 1
                && gravity.scale() <= MOST_DECIMALS + 20
                && gravity.stripTrailingZeros().scale() <= MOST_DECIMALS && gravity.signum() > 0
                && gravity.compareTo(BigDecimal.ONE) < 0;
    }
}
