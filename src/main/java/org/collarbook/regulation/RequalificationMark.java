package org.collarbook.regulation;

import java.time.YearMonth;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/**
 * A requalification mark as stamped under 49 CFR 180.213 (month, RIN if any, year, suffix) or, on a tank, 180.415. One
 * mark of a tank tells of several tests; no method means that none is known. A mark without a suffix is a volumetric
 * expansion test.
 */
public record RequalificationMark(YearMonth month, @Nullable Rin rin, List<Method> methods, boolean star,
        boolean plus) {

    public static final String RIN_NOT_RECORDED = "the RIN is not recorded, which marks after May 2004 bear";

    public RequalificationMark {
        methods = List.copyOf(methods);
    }

    public static RequalificationMark of(Requalification done) {
        Method method = done.method();
        return new RequalificationMark(done.month(), done.rin(), method == null ? List.of() : List.of(method),
                done.star(), done.plus());
    }

    public static Reading<RequalificationMark> read(String raw, Collar collar) {
        return new MarkReading(raw, collar).read();
    }

    /** What was done, one entry a test; a mark is stamped on what has passed. */
    public List<Requalification> requalifications() {
        Stream<@Nullable Method> done = methods.isEmpty() ? Stream.of((Method) null) : methods.stream().map(m -> m);
        return done.map(method -> new Requalification(month, method, star, plus, rin, false, Result.PASSED)).toList();
    }

    /** The plain form with a four-digit year, such as {@code 5/B045/2016 E}. */
    @Override
    public String toString() {
        StringBuilder mark = new StringBuilder().append(month.getMonthValue());
        mark.append(rin == null ? "-" : "/" + rin + "/").append("%04d".formatted(month.getYear()));
        String suffix = methods.isEmpty()
                ? "?"
                : methods.stream().map(RequalificationMark::suffix).collect(Collectors.joining(", "));
        mark.append(suffix.isEmpty() ? "" : " " + suffix);
        return mark.append(star ? " *" : "").append(plus ? " +" : "").toString();
    }

    /** The marks written so that each is read back as itself; where the writing is one, the methods beside it. */
    public static String either(List<RequalificationMark> marks) {
        boolean apart = marks.stream().map(RequalificationMark::toString).distinct().count() == marks.size();
        return marks.stream().map(mark -> apart ? mark.toString() : mark + " as " + mark.methods())
                .collect(Collectors.joining(" or "));
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
            case V, I, K, P, L, T -> method.name();
            // no letter of a mark stands for it
            default -> "?";
        };
    }
}
