package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.collarbook.regulation.MarkReading.Ambiguous;
import org.collarbook.regulation.MarkReading.Read;
import org.collarbook.regulation.MarkReading.Unreadable;
import org.jspecify.annotations.Nullable;

final class RequalificationMarkParser {

    private static final Pattern MARK = Pattern.compile("\\s*(\\d{1,2})(?:\\s*[-/ ]\\s*([A-Za-z]\\d{3}))?\\s*[-/ ]\\s*"
            + "(\\d{4}|\\d{2})(?!\\d)\\s*(.*)", Pattern.DOTALL);
    private static final Pattern RUN_TOGETHER = Pattern.compile("\\s*(\\d{2})()(\\d{4}|\\d{2})(?!\\d)\\s*(.*)",
            Pattern.DOTALL);
    private static final Pattern SUFFIX = Pattern.compile("([A-Z?]{0,2})\\s*([*★]?)\\s*(\\+?)\\s*([*★]?)\\s*");
    private static final int FIRST_YEAR = 1900;

    private final String text;
    private final @Nullable YearMonth manufactured;
    private final LocalDate asOf;
    private final @Nullable Specification specification;
    private final List<String> warnings = new ArrayList<>();

    RequalificationMarkParser(String text, @Nullable YearMonth manufactured, LocalDate asOf,
            @Nullable Specification specification) {
        this.text = text;
        this.manufactured = manufactured;
        this.asOf = asOf;
        this.specification = specification;
    }

    MarkReading read() {
        Matcher mark = RUN_TOGETHER.matcher(text);
        if (!mark.matches()) {
            mark = MARK.matcher(text);
            if (!mark.matches()) {
                return unreadable(firstOddity(), "month, RIN if any, and year, such as 5-16E or 5/B045/16 E");
            }
        }
        int month = Integer.parseInt(mark.group(1));
        if (month < 1 || month > 12) {
            return unreadable(mark.start(1), "a month from 1 to 12");
        }
        List<YearMonth> months = months(month, mark.group(3));
        if (months.isEmpty()) {
            return unreadable(mark.start(3), "a year that puts the mark between "
                    + (manufactured == null ? FIRST_YEAR : manufactured) + " and " + YearMonth.from(asOf));
        }
        Matcher suffix = SUFFIX.matcher(mark.group(4).toUpperCase(Locale.ROOT));
        List<@Nullable Method> methods = suffix.matches() ? methods(suffix.group(1)) : List.of();
        if (methods.isEmpty()) {
            return unreadable(mark.start(4), "no suffix, or one of S E FS AE UE VE V I K P, and * or +");
        }
        return reading(mark, months, methods, suffix);
    }

    private MarkReading reading(Matcher mark, List<YearMonth> months, List<@Nullable Method> methods, Matcher suffix) {
        String rin = mark.group(2);
        boolean star = !suffix.group(2).isEmpty() || !suffix.group(4).isEmpty();
        boolean plus = !suffix.group(3).isEmpty();
        List<Requalification> readings = new ArrayList<>();
        for (YearMonth month : months) {
            for (Method method : methods) {
                readings.add(new Requalification(month, method, star, plus, rin == null || rin.isEmpty()
                        ? null
                        : Rin.parse(rin), false, Requalification.Result.PASSED));
            }
        }
        return readings.size() == 1 ? new Read(readings.getFirst(), List.copyOf(warnings)) : new Ambiguous(readings);
    }

    private Unreadable unreadable(int index, String expected) {
        ParseResult.Rejected<?> rejected = ParseResult.rejectedAt(text, index, expected);
        return new Unreadable(rejected.index(), rejected.found(), rejected.expected());
    }

    private int firstOddity() {
        int i = 0;
        while (i < text.length() && "0123456789-/ ".indexOf(text.charAt(i)) >= 0) {
            i++;
        }
        return i;
    }

    private List<YearMonth> months(int month, String year) {
        List<YearMonth> months = new ArrayList<>();
        if (year.length() == 4) {
            consider(YearMonth.of(Integer.parseInt(year), month), months);
            return months;
        }
        for (int y = FIRST_YEAR + Integer.parseInt(year); y <= asOf.getYear(); y += 100) {
            if (manufactured != null || y >= RequalificationMark.EARLIEST_BY_TWO_DIGITS) {
                consider(YearMonth.of(y, month), months);
            }
        }
        return months;
    }

    private void consider(YearMonth month, List<YearMonth> months) {
        boolean early = manufactured == null ? month.getYear() < FIRST_YEAR : month.isBefore(manufactured);
        if (!early && !Outcome.isAhead(month, asOf)) {
            months.add(month);
        }
    }

    /** Empty for a suffix that no rule explains; a null method for one that is legible and means nothing known. */
    private List<@Nullable Method> methods(String suffix) {
        return switch (suffix) {
            case "" -> List.of(Method.VOLUMETRIC_EXPANSION);
            case "S" -> proofOrShell();
            case "E" -> List.of(Method.EXTERNAL_VISUAL);
            case "FS" -> List.of(Method.SHELL_AND_FILLER);
            case "AE" -> List.of(Method.ACOUSTIC_EMISSION);
            case "UE" -> List.of(Method.ULTRASONIC);
            case "VE" -> List.of(Method.EDDY_CURRENT_VISUAL);
            case "V", "I", "K", "P" -> List.of(Method.valueOf(suffix));
            case "R", "?" -> unknown();
            default -> List.of();
        };
    }

    private List<@Nullable Method> proofOrShell() {
        if (specification == null) {
            return List.of(Method.PROOF_PRESSURE, Method.SHELL_ONLY);
        }
        if (specification.isSeries8()) {
            return List.of(Method.SHELL_ONLY);
        }
        // PHMSA letter 13-0032 (2013-05-29) met an S that stood for a siphon tube.
        warnings.add("an S beside the date is read as a proof pressure test; it may also stand for a siphon tube");
        return List.of(Method.PROOF_PRESSURE);
    }

    private List<@Nullable Method> unknown() {
        warnings.add("the suffix names no method that is known");
        List<@Nullable Method> none = new ArrayList<>();
        none.add(null);
        return none;
    }
}
