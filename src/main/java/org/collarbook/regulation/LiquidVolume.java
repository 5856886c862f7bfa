package org.collarbook.regulation;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * How much less room liquid propane takes when cold: its density over that at 60 °F. The figures are saturated-liquid
 * densities of propane by the equation of state of Lemmon, McLinden and Wagner (J. Chem. Eng. Data 54, 2009, 3141), as
 * CoolProp 8.0.0 computes them, each divided by 506.687 kg/m³ at 60 °F. 29 CFR 1910.110(b)(19)(v) uses 1.031 at 40 °F
 * and gives 4.37 and 4.31 lb a gallon at 40 and 50 °F. A volume so corrected is for reading a gauge or a meter; what may
 * be put in is decided by weight.
 */
public final class LiquidVolume {

    /** The rows of 41 to 43 % of the filling density table, which is what propane is sold as. */
    private static final BigDecimal LIGHTEST = new BigDecimal("0.496");
    private static final BigDecimal HEAVIEST = new BigDecimal("0.519");
    private static final BigDecimal COLDEST = BigDecimal.valueOf(-40);
    private static final BigDecimal WARMEST = BigDecimal.valueOf(130);

    /** From -40 °F in steps of 10. */
    private static final String[] FACTORS = {"1.14160", "1.12876", "1.11569", "1.10238", "1.08880", "1.07493",
            "1.06074", "1.04619", "1.03125", "1.01587", "1.00000", "0.98358", "0.96655", "0.94881", "0.93026",
            "0.91077", "0.89016", "0.86822"};

    private LiquidVolume() {}

    /** Gallons at 60 °F that a gallon at this temperature becomes; null where it is not held. */
    public static @Nullable BigDecimal factor(BigDecimal specificGravity, BigDecimal fahrenheit) {
        if (specificGravity.compareTo(LIGHTEST) < 0 || specificGravity.compareTo(HEAVIEST) > 0
                || fahrenheit.compareTo(COLDEST) < 0 || fahrenheit.compareTo(WARMEST) > 0) {
            return null;
        }
        BigDecimal above = fahrenheit.subtract(COLDEST);
        int row = Math.min(above.movePointLeft(1).intValue(), FACTORS.length - 2);
        BigDecimal low = new BigDecimal(FACTORS[row]);
        BigDecimal step = new BigDecimal(FACTORS[row + 1]).subtract(low);
        BigDecimal part = above.movePointLeft(1).subtract(BigDecimal.valueOf(row));
        return low.add(step.multiply(part)).setScale(5, RoundingMode.HALF_EVEN);
    }
}
