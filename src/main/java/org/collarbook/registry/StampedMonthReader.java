package org.collarbook.registry;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.collarbook.registry.StampedMonth.Ambiguous;
import org.collarbook.registry.StampedMonth.Read;
import org.collarbook.registry.StampedMonth.Unreadable;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

final class StampedMonthReader {

    private static final String BETWEEN = "\\s*(?:[-/. ]|\\s[A-Za-z]{1,3}\\s)\\s*";
    private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})[-/ ](\\d{1,2})");
    private static final Pattern APART = Pattern.compile("(?:[A-Za-z]{1,3}\\s+)?(\\d{1,2})" + BETWEEN
            + "(\\d{4}|\\d{2})");
    private static final Pattern TOGETHER = Pattern.compile("(?:[A-Za-z]{1,3}\\s+)?(\\d{2})(\\d{4}|\\d{2})");
    private static final String EXPECTED = "month and year as stamped, such as 5-95, 05/2004, 0595, 5 A 95 or 2004-05";
    private static final int EARLIEST = 1900;

    private final String text;
    private final YearMonth last;
    private final boolean un;

    StampedMonthReader(String text, LocalDate asOf, @Nullable Specification specification) {
        this.text = text.strip();
        this.last = YearMonth.from(asOf);
        this.un = specification != null && specification.authority() == Authority.UN;
    }

    StampedMonth read() {
        var yearFirst = YEAR_FIRST.matcher(text);
        if (yearFirst.matches()) {
            return reading(yearFirst, 2, 1);
        }
        var apart = APART.matcher(text);
        var together = TOGETHER.matcher(text);
        var shape = apart.matches() ? apart : together;
        if (shape == together && !together.matches()) {
            return unreadable(firstOddity(), EXPECTED, false);
        }
        return un && shape.group(2).length() == 2 && shape.group(1).length() == 2
                ? eitherOrder(shape)
                : reading(shape, 1, 2);
    }

    private StampedMonth reading(Matcher shape, int monthGroup, int yearGroup) {
        int month = Integer.parseInt(shape.group(monthGroup));
        if (month < 1 || month > 12) {
            return unreadable(shape.start(monthGroup), "a month from 1 to 12", false);
        }
        var year = shape.group(yearGroup);
        var months = months(month, year);
        return switch (months.size()) {
            case 0 -> unreadable(shape.start(yearGroup), "a year that puts the month between "
                    + (year.length() == 4 ? EARLIEST : RequalificationMark.EARLIEST_BY_TWO_DIGITS) + " and " + last,
                    ahead(month, year));
            case 1 -> new Read(months.getFirst());
            default -> new Ambiguous(months);
        };
    }

    /** UN marks: year first by ISO 13769, month first where a US shop has stamped it. */
    private StampedMonth eitherOrder(Matcher shape) {
        var months = new ArrayList<YearMonth>();
        for (int monthGroup = 1; monthGroup <= 2; monthGroup++) {
            int month = Integer.parseInt(shape.group(monthGroup));
            if (month >= 1 && month <= 12) {
                months(month, shape.group(3 - monthGroup)).stream().filter(found -> !months.contains(found))
                        .forEach(months::add);
            }
        }
        return switch (months.size()) {
            case 0 -> unreadable(shape.start(1), "a month from 1 to 12 and a year not in the future", false);
            case 1 -> new Read(months.getFirst());
            default -> new Ambiguous(List.copyOf(months));
        };
    }

    private List<YearMonth> months(int month, String year) {
        var months = new ArrayList<YearMonth>();
        int written = Integer.parseInt(year);
        if (year.length() == 4) {
            if (written >= EARLIEST && !YearMonth.of(written, month).isAfter(last)) {
                months.add(YearMonth.of(written, month));
            }
            return months;
        }
        for (int y = EARLIEST + written; y <= last.getYear(); y += 100) {
            if (y >= RequalificationMark.EARLIEST_BY_TWO_DIGITS && !YearMonth.of(y, month).isAfter(last)) {
                months.add(YearMonth.of(y, month));
            }
        }
        return months;
    }

    private boolean ahead(int month, String year) {
        int written = Integer.parseInt(year);
        int century = last.getYear() / 100 * 100;
        return YearMonth.of(year.length() == 4 ? written : century + written, month).isAfter(last);
    }

    private Unreadable unreadable(int index, String expected, boolean future) {
        var rejected = ParseResult.rejectedAt(text, index, expected);
        return new Unreadable(rejected.index(), rejected.found(), expected, future);
    }

    private int firstOddity() {
        int i = 0;
        while (i < text.length() && "0123456789-/. ".indexOf(text.charAt(i)) >= 0) {
            i++;
        }
        return i == text.length() && i > 2 ? 0 : i;
    }
}
