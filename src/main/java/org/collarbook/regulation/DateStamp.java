package org.collarbook.regulation;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The two numbers of a date as stamped, with what stands among them, found at the start of a text in capitals. What
 * month they name is for {@link DateReading}.
 */
record DateStamp(Form form, Number first, Number second, @Nullable Number rin, List<String> letters,
        boolean lettersBetween, int end) {

    enum Form {
        /** Two numbers with a slash between, which either order is written with. */
        SLASHED,
        APART,
        TOGETHER,
        YEAR_BEFORE_MONTH
    }

    /** Digits, or a RIN, and where they stand. */
    record Number(int at, String text) {

        int value() {
            return Integer.parseInt(text);
        }
    }

    /** The marks of the inspector, or of country and body, before the date; 49 CFR 178.35(f), UN 6.2.2.7.7. */
    private static final String LEAD = "(?<letters>(?:[A-Z]{1,3} ){0,2})";
    private static final String GAP = " ?[-/. ] ?";
    private static final String YEAR = "(?<second>\\d{4}|\\d{2})(?!\\d)";
    /**
     * The square of 49 CFR 180.213(d), line by line: the RIN reads clockwise, so the lower line has its third character
     * on the right.
     */
    private static final Pattern SQUARE = Pattern.compile("(?<first>\\d{1,2})[ /-]{1,3}(?<upper>[A-Z]\\d)[ /]{1,3}"
            + "(?<lower>\\d\\d)[ /-]{1,3}" + YEAR);
    private static final Pattern WITH_RIN = Pattern.compile("(?<first>\\d{1,2})" + GAP + "(?<rin>[A-Z]\\d{3})" + GAP
            + YEAR);
    private static final Pattern YEAR_BEFORE_MONTH = Pattern.compile(LEAD + "(?<first>\\d{4})" + GAP
            + "(?<second>\\d{1,2})(?!\\d)");
    private static final Pattern LETTERS_BETWEEN = Pattern
            .compile("(?<first>\\d{1,2})[-/. ](?<letters>[A-Z]{1,3})[-/. ]"
                    + YEAR);
    private static final Pattern SLASHED = Pattern.compile(LEAD + "(?<first>\\d{1,2}) ?/ ?" + YEAR);
    private static final Pattern APART = Pattern.compile(LEAD + "(?<first>\\d{1,2})" + GAP + YEAR);
    private static final Pattern TOGETHER = Pattern.compile(LEAD + "(?<first>\\d{2})" + YEAR);

    private record Shape(Pattern pattern, Form form) {}

    private static final List<Shape> SHAPES = List.of(new Shape(YEAR_BEFORE_MONTH, Form.YEAR_BEFORE_MONTH),
            new Shape(LETTERS_BETWEEN, Form.APART), new Shape(SLASHED, Form.SLASHED), new Shape(APART, Form.APART),
            new Shape(TOGETHER, Form.TOGETHER));

    static @Nullable DateStamp at(String capitals) {
        Matcher square = SQUARE.matcher(capitals);
        if (square.lookingAt()) {
            String lower = square.group("lower");
            String rin = square.group("upper") + lower.charAt(1) + lower.charAt(0);
            return of(square, Form.APART, List.of(), new Number(square.start("upper"), rin));
        }
        Matcher withRin = WITH_RIN.matcher(capitals);
        if (withRin.lookingAt()) {
            return of(withRin, Form.APART, List.of(), new Number(withRin.start("rin"), withRin.group("rin")));
        }
        for (Shape shape : SHAPES) {
            Matcher matcher = shape.pattern.matcher(capitals);
            if (matcher.lookingAt()) {
                String letters = matcher.group("letters").strip();
                return of(matcher, shape.form, letters.isEmpty() ? List.of() : List.of(letters.split(" ")), null);
            }
        }
        return null;
    }

    private static DateStamp of(Matcher matcher, Form form, List<String> letters, @Nullable Number rin) {
        return new DateStamp(form, new Number(matcher.start("first"), matcher.group("first")),
                new Number(matcher.start("second"), matcher.group("second")), rin, letters,
                !letters.isEmpty() && matcher.start("letters") > matcher.start("first"), matcher.end());
    }

    /** Where a text that is no date stops looking like one. */
    static int stopsAt(String text) {
        int i = 0;
        while (i < text.length() && "0123456789-/. ".indexOf(text.charAt(i)) >= 0) {
            i++;
        }
        return i == text.length() && i > 2 ? 0 : i;
    }

    /** The two numbers could be told apart by their size alone: the second is a whole year. */
    boolean hasWholeYear() {
        return second.text.length() == 4;
    }

    /** Four digits that are no month and year but may be a year alone, as 2014. */
    boolean mayBeYearAlone() {
        return form == Form.TOGETHER && !hasWholeYear() && (first.value() == 19 || first.value() == 20);
    }
}
