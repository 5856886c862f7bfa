package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.YearMonth;
import org.jspecify.annotations.Nullable;

/**
 * Reads a requalification mark as stamped under 49 CFR 180.213: month, the RIN if any, year, suffix. The month comes
 * first, so "1202" is December 2002. A mark without a suffix is a volumetric expansion test. Two-digit years are those
 * not before the manufacture and not after the day of reading.
 */
public final class RequalificationMark {

    /**
     * Where nothing else is known, two digits name a year from this one on. Common practice, no source: LP-gas cylinders
     * still about are not older, and an older one is written with four digits.
     */
    public static final int EARLIEST_BY_TWO_DIGITS = 1940;

    private RequalificationMark() {}

    public static MarkReading read(String text, @Nullable YearMonth manufactured, LocalDate asOf,
            @Nullable Specification specification) {
        return new RequalificationMarkParser(text, manufactured, asOf, specification).read();
    }

    /** The mark in its plain form with a four-digit year, such as {@code 5/B045/2016 E}. */
    public static String print(Requalification requalification) {
        StringBuilder mark = new StringBuilder().append(requalification.month().getMonthValue());
        Rin rin = requalification.rin();
        mark.append(rin == null ? "-" : "/" + rin + "/").append("%04d".formatted(requalification.month().getYear()));
        Method method = requalification.method();
        String suffix = method == null ? "?" : suffix(method);
        mark.append(suffix.isEmpty() ? "" : " " + suffix);
        mark.append(requalification.star() ? " *" : "").append(requalification.plus() ? " +" : "");
        return mark.toString();
    }

    private static String suffix(Method method) {
        return switch (method) {
            case VOLUMETRIC_EXPANSION -> "";
            case PROOF_PRESSURE, SHELL_ONLY -> "S";
            case EXTERNAL_VISUAL -> "E";
            case ULTRASONIC -> "UE";
            case EDDY_CURRENT_VISUAL -> "VE";
            case ACOUSTIC_EMISSION -> "AE";
            case SHELL_AND_FILLER -> "FS";
            case V, I, K, P, L, T, PERIODIC, INTERMEDIATE, EXAMINATION, THOROUGH_EXAMINATION, VALVE_REPLACED,
                    VALVE_SERVICED, VALVE_INSPECTED, HOSE_TESTED, UNLOADING_SYSTEM_INSPECTED, PROTECTION_INSTALLED,
                    PROTECTION_TESTED, EXTINGUISHER_INSPECTED, EXTINGUISHER_MAINTAINED, EXTINGUISHER_EMPTIED,
                    EXTINGUISHER_PRESSURE_TESTED ->
                method.name();
        };
    }
}
