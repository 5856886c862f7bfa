package org.collarbook.regulation;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.collarbook.regulation.DateStamp.Form;
import org.collarbook.regulation.DateStamp.Number;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Fault;
import org.collarbook.regulation.Reading.Read;
import org.jspecify.annotations.Nullable;

/**
 * Which months a date can name: not before the original test, not ahead of the day of reading and, where that leaves two
 * centuries, not before the mark before it.
 */
final class DateReading {

    private static final int FIRST_YEAR = 1900;

    private final StampText text;
    private final DateStamp date;
    private final Collar collar;
    private final List<String> warnings;

    DateReading(StampText text, DateStamp date, Collar collar) {
        this.text = text;
        this.date = date;
        this.collar = collar;
        this.warnings = text.warnings();
    }

    Reading<YearMonth> read(DateOrder order) {
        if (date.form() == Form.YEAR_BEFORE_MONTH) {
            return written(date.second(), date.first());
        }
        if (date.mayBeYearAlone() && (collar.specification() == null || collar.isUnder(Authority.ADR))) {
            return anyMonthOf(date.first().value() * 100 + date.second().value());
        }
        if (date.hasWholeYear() || order == DateOrder.MONTH_FIRST || date.first().text().length() == 1) {
            return written(date.first(), date.second());
        }
        return order == DateOrder.YEAR_FIRST ? yearFirst() : eitherOrder();
    }

    private Reading<YearMonth> yearFirst() {
        if (isMonth(date.second()) || !isMonth(date.first())) {
            return written(date.second(), date.first());
        }
        warnings.add("a UN or ADR mark has the year first; read with the month first, since " + date.second().text()
                + " is no month");
        return written(date.first(), date.second());
    }

    private Reading<YearMonth> eitherOrder() {
        boolean yearFirst = isMonth(date.second())
                && (date.form() == Form.SLASHED || date.form() == Form.APART && isMonth(date.first()));
        TreeSet<YearMonth> months = new TreeSet<>(isMonth(date.first())
                ? months(date.first().value(), date.second())
                : List.of());
        boolean monthFirst = !months.isEmpty();
        if (yearFirst) {
            months.addAll(months(date.second().value(), date.first()));
        }
        if (months.isEmpty()) {
            return written(date.first(), date.second());
        }
        if (!monthFirst) {
            warnings.add("read with the year first, as UN and ADR marks have it, since no month is possible otherwise");
        }
        return settle(List.copyOf(months), "a mark under DOT or TC has the month first, one under UN or ADR the year:"
                + " the specification decides");
    }

    private Reading<YearMonth> anyMonthOf(int year) {
        List<YearMonth> months = IntStream.rangeClosed(1, 12).mapToObj(month -> YearMonth.of(year, month))
                .filter(month -> !isEarly(month) && !Outcome.isAhead(month, collar.asOf())).toList();
        return months.isEmpty()
                ? outOfRange(date.first(), List.of(YearMonth.of(year, 1), YearMonth.of(year, 12)))
                : settle(months, "a year alone, as ADR 6.2.3.9 lets it stand, may be any of its months");
    }

    private Reading<YearMonth> written(Number month, Number year) {
        if (!isMonth(month)) {
            return text.unreadable(month.at(), "a month from 1 to 12");
        }
        List<YearMonth> months = months(month.value(), year);
        return months.isEmpty()
                ? outOfRange(year, centuries(month.value(), year))
                : settle(months, "two digits of the year leave the century open");
    }

    private static boolean isMonth(Number number) {
        return number.text().length() <= 2 && number.value() >= 1 && number.value() <= 12;
    }

    private List<YearMonth> months(int month, Number year) {
        return centuries(month, year).stream().filter(one -> !isEarly(one) && !Outcome.isAhead(one, collar.asOf()))
                .toList();
    }

    /** The months that are written so, of any age. */
    private List<YearMonth> centuries(int month, Number year) {
        if (year.text().length() == 4) {
            return List.of(YearMonth.of(year.value(), month));
        }
        List<YearMonth> months = new ArrayList<>();
        for (int y = FIRST_YEAR + year.value(); y <= collar.asOf().getYear() + 99; y += 100) {
            months.add(YearMonth.of(y, month));
        }
        return months;
    }

    private boolean isEarly(YearMonth month) {
        YearMonth made = collar.manufactured();
        return made != null ? month.isBefore(made) : !isStillAbout(month);
    }

    /** Old enough to be disbelieved where nothing is known of the original test. */
    private boolean isStillAbout(YearMonth month) {
        boolean whole = date.hasWholeYear() || date.form() == Form.YEAR_BEFORE_MONTH || date.mayBeYearAlone();
        return month.getYear() >= (whole ? FIRST_YEAR : StampedMonth.EARLIEST_BY_TWO_DIGITS);
    }

    private Reading<YearMonth> outOfRange(Number year, List<YearMonth> written) {
        Predicate<YearMonth> ahead = month -> Outcome.isAhead(month, collar.asOf());
        YearMonth made = collar.manufactured();
        boolean early = made != null && written.stream().anyMatch(month -> isStillAbout(month)
                && month.isBefore(made) && !ahead.test(month));
        Fault fault = early
                ? Fault.BEFORE_MANUFACTURE
                : written.stream().anyMatch(ahead) && written.stream().noneMatch(month -> isStillAbout(month)
                        && !ahead.test(month)) ? Fault.IN_THE_FUTURE : Fault.SHAPE;
        return text.unreadable(fault, year.at(), "a year that puts the month between "
                + (made != null ? made + ", the original test," : earliestYear()) + " and "
                + YearMonth.from(collar.asOf()));
    }

    private int earliestYear() {
        return date.hasWholeYear() || date.form() == Form.YEAR_BEFORE_MONTH
                ? FIRST_YEAR
                : StampedMonth.EARLIEST_BY_TWO_DIGITS;
    }

    private Reading<YearMonth> settle(List<YearMonth> months, String because) {
        YearMonth previous = collar.previous();
        List<YearMonth> later = months.stream().filter(month -> !isBefore(month, previous)).toList();
        List<YearMonth> left = later.isEmpty() ? months : later;
        if (left.size() > 1) {
            return new Ambiguous<>(text.raw(), left, because);
        }
        if (later.isEmpty()) {
            warnings.add("it is earlier than the mark before it, " + previous);
        }
        return new Read<>(text.raw(), left.getFirst(), warnings);
    }

    private static boolean isBefore(YearMonth month, @Nullable YearMonth previous) {
        return previous != null && month.isBefore(previous);
    }
}
