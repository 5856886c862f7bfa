package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.Declaration;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampedMonth;
import org.jspecify.annotations.Nullable;

/**
 * Reads the last test from the mark as stamped, or from a bare month. A bare month tells no method: only the declaration
 * does, and without one the method stays a missing fact.
 */
final class LastTestReader {

    private static final int LONGEST_MARK = 60;

    private final LocalDate asOf;
    private final @Nullable Method bareMonthMethod;
    private final boolean rinSeen;

    LastTestReader(LocalDate asOf, @Nullable Declaration said) {
        this.asOf = asOf;
        this.bareMonthMethod = said == null ? null : said.bareMonthMethod();
        this.rinSeen = said != null && Boolean.TRUE.equals(said.rinSeen());
    }

    /** The collar was read and bears no later mark. */
    static boolean saysNone(Cells cells) {
        return "none".equalsIgnoreCase(cells.get(LedgerColumn.LAST_TEST_MARK));
    }

    /** Empty where there is none or it was refused; a mark of a tank may tell of several. */
    List<LastTest> read(Cells cells, @Nullable YearMonth manufactured, @Nullable Specification specification) {
        var collar = Collar.of(specification, manufactured, asOf);
        var rin = rin(cells);
        var month = bareMonth(cells, collar);
        if (saysNone(cells) || cells.isBlank(LedgerColumn.LAST_TEST_MARK)
                && cells.isBlank(LedgerColumn.LAST_TEST_MONTH)) {
            refuseLeftovers(cells);
            return List.of();
        }
        if (cells.isBlank(LedgerColumn.LAST_TEST_MARK)) {
            return month == null ? List.of() : List.of(stamped(month, bareMonthMethod, rin));
        }
        var text = cells.text(LedgerColumn.LAST_TEST_MARK, LONGEST_MARK);
        var read = text == null ? null : mark(cells, LedgerColumn.LAST_TEST_MARK, text, collar);
        if (read == null) {
            return List.of();
        }
        if (month != null && !month.equals(read.month())) {
            cells.refuse(LedgerColumn.LAST_TEST_MONTH, "CONTRADICTS_MARK", "the month of the mark, " + read.month());
        }
        if (rin != null && read.rin() != null && !rin.equals(read.rin())) {
            cells.refuse(LedgerColumn.RIN, "CONTRADICTS_MARK", "the RIN in the mark, " + read.rin());
        }
        return read.requalifications().stream().map(one -> finished(new Requalification(one.month(), one.method(),
                one.star(), one.plus(), one.rin() == null ? rin : one.rin(), false, one.result()), text,
                LastTest.NOT_DECLARED)).toList();
    }

    private static void refuseLeftovers(Cells cells) {
        if (saysNone(cells) && !cells.isBlank(LedgerColumn.OTHER_TESTS)) {
            cells.refuse(LedgerColumn.OTHER_TESTS, "CONTRADICTS_MARK", "blank where no later mark is stamped");
        }
        if (saysNone(cells) && !cells.isBlank(LedgerColumn.LAST_TEST_MONTH)) {
            cells.refuse(LedgerColumn.LAST_TEST_MONTH, "CONTRADICTS_MARK", "blank where no later mark is stamped");
        }
        if (!cells.isBlank(LedgerColumn.RIN)) {
            cells.refuse(LedgerColumn.RIN, "RIN_WITHOUT_TEST", "blank where no last test is given");
        }
    }

    private LastTest stamped(YearMonth month, @Nullable Method method, @Nullable Rin rin) {
        return finished(new Requalification(month, method, false, false, rin, false, Requalification.Result.PASSED),
                null, method == null ? LastTest.NOT_DECLARED : LastTest.BY_LEDGER);
    }

    private LastTest finished(Requalification test, @Nullable String asStamped, int declared) {
        return !rinSeen || !test.lacksRin()
                ? new LastTest(test, null, asStamped, declared)
                : new LastTest(new Requalification(test.month(), test.method(), test.star(), test.plus(), null, true,
                        test.result()), null, asStamped, LastTest.BY_LEDGER);
    }

    static @Nullable RequalificationMark mark(Cells cells, LedgerColumn column, String text, Collar collar) {
        switch (RequalificationMark.read(text, collar)) {
            case Read<RequalificationMark>(var _, var mark, var warnings) -> {
                // a RIN may stand in its own column, and where it does not the assessment of each container says so
                warnings.stream().filter(warning -> !warning.equals(RequalificationMark.RIN_NOT_RECORDED))
                        .forEach(warning -> cells.problems().remark(column, "READ_WITH_A_DOUBT", text, warning));
                return mark;
            }
            case Ambiguous<RequalificationMark>(var _, var readings, var because) -> cells.problems().refuse(
                    column, "AMBIGUOUS_MARK", text, "one of " + RequalificationMark.either(readings)
                            + ", written so: " + because);
            case Unreadable<RequalificationMark> unreadable -> refuse(cells, column, text, unreadable,
                    "INVALID_MARK", "INVALID_MARK");
        }
        return null;
    }

    /** A date that could be read if the container were older is not ill-written: it contradicts the manufacture. */
    private static void refuse(Cells cells, LedgerColumn column, String text, Unreadable<?> unreadable,
            String future, String otherwise) {
        var code = switch (unreadable.fault()) {
            case BEFORE_MANUFACTURE -> "TEST_BEFORE_MANUFACTURE";
            case IN_THE_FUTURE -> future;
            case SHAPE -> otherwise;
        };
        cells.problems().refuse(column, code, text, unreadable.expected() + "; there stands " + unreadable.found());
    }

    private @Nullable YearMonth bareMonth(Cells cells, Collar collar) {
        var text = cells.text(LedgerColumn.LAST_TEST_MONTH, LONGEST_MARK);
        if (text == null) {
            return null;
        }
        switch (StampedMonth.read(text, collar)) {
            case Read<YearMonth>(var _, var month, var warnings) -> {
                warnings.forEach(warning -> cells.problems().remark(LedgerColumn.LAST_TEST_MONTH, "READ_WITH_A_DOUBT",
                        text, warning));
                return month;
            }
            case Ambiguous<YearMonth>(var _, var months, var because) -> cells.refuse(LedgerColumn.LAST_TEST_MONTH,
                    "AMBIGUOUS_MONTH", "one of " + months + ", written so: " + because);
            case Unreadable<YearMonth> unreadable -> refuse(cells, LedgerColumn.LAST_TEST_MONTH, text, unreadable,
                    "IN_THE_FUTURE", "INVALID_MONTH");
        }
        return null;
    }

    private static @Nullable Rin rin(Cells cells) {
        var text = cells.text(LedgerColumn.RIN, LONGEST_MARK);
        return text == null ? null : switch (Rin.tryParse(text)) {
            case Parsed<Rin>(var rin, var _) -> rin;
            case Rejected<Rin>(int _, var found, var expected) -> {
                cells.refuse(LedgerColumn.RIN, "INVALID_RIN", expected + "; there stands " + found);
                yield null;
            }
        };
    }
}
