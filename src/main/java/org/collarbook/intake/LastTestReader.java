package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.StampedMonth;
import org.collarbook.regulation.MarkReading;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Specification;
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

    @Nullable
    LastTest read(Cells cells, @Nullable YearMonth manufactured, @Nullable Specification specification) {
        var rin = rin(cells);
        var month = bareMonth(cells, manufactured);
        if (saysNone(cells) || cells.isBlank(LedgerColumn.LAST_TEST_MARK)
                && cells.isBlank(LedgerColumn.LAST_TEST_MONTH)) {
            refuseLeftovers(cells);
            return null;
        }
        if (cells.isBlank(LedgerColumn.LAST_TEST_MARK)) {
            return month == null ? null : stamped(month, bareMonthMethod, rin);
        }
        var read = mark(cells, manufactured, specification);
        if (read == null) {
            return null;
        }
        if (month != null && !month.equals(read.month())) {
            cells.refuse(LedgerColumn.LAST_TEST_MONTH, "CONTRADICTS_MARK", "the month of the mark, " + read.month());
        }
        if (rin != null && read.rin() != null && !rin.equals(read.rin())) {
            cells.refuse(LedgerColumn.RIN, "CONTRADICTS_MARK", "the RIN in the mark, " + read.rin());
        }
        return finished(new Requalification(read.month(), read.method(), read.star(), read.plus(),
                read.rin() == null ? rin : read.rin(), false, read.result()), cells.get(LedgerColumn.LAST_TEST_MARK),
                false);
    }

    private static void refuseLeftovers(Cells cells) {
        if (saysNone(cells) && !cells.isBlank(LedgerColumn.LAST_TEST_MONTH)) {
            cells.refuse(LedgerColumn.LAST_TEST_MONTH, "CONTRADICTS_MARK", "blank where no later mark is stamped");
        }
        if (!cells.isBlank(LedgerColumn.RIN)) {
            cells.refuse(LedgerColumn.RIN, "RIN_WITHOUT_TEST", "blank where no last test is given");
        }
    }

    private LastTest stamped(YearMonth month, @Nullable Method method, @Nullable Rin rin) {
        return finished(new Requalification(month, method, false, false, rin, false, Requalification.Result.PASSED),
                null, method != null);
    }

    private LastTest finished(Requalification test, @Nullable String asStamped, boolean declared) {
        return !rinSeen || !test.lacksRin()
                ? new LastTest(test, asStamped, declared)
                : new LastTest(new Requalification(test.month(), test.method(), test.star(), test.plus(), null, true,
                        test.result()), asStamped, true);
    }

    private @Nullable Requalification mark(Cells cells, @Nullable YearMonth manufactured,
            @Nullable Specification specification) {
        var text = cells.text(LedgerColumn.LAST_TEST_MARK, LONGEST_MARK);
        if (text == null) {
            return null;
        }
        switch (RequalificationMark.read(text, manufactured, asOf, specification)) {
            case MarkReading.Read(var test, var warnings) -> {
                warnings.forEach(warning -> cells.problems().remark(LedgerColumn.LAST_TEST_MARK, "READ_WITH_A_DOUBT",
                        text, warning));
                return test;
            }
            case MarkReading.Ambiguous(var readings) -> cells.refuse(LedgerColumn.LAST_TEST_MARK, "AMBIGUOUS_MARK",
                    "one of " + plain(readings) + ", written so");
            case MarkReading.Unreadable(int _, var found, var expected) -> refuseUnreadable(cells, text, manufactured,
                    specification, expected + "; there stands " + found);
        }
        return null;
    }

    private static String plain(List<Requalification> readings) {
        return readings.stream().map(RequalificationMark::print).collect(Collectors.joining(" or "));
    }

    /** A mark that could be read if the container were older is not ill-written: it contradicts the manufacture. */
    private void refuseUnreadable(Cells cells, String text, @Nullable YearMonth manufactured,
            @Nullable Specification specification, String accepted) {
        boolean early = manufactured != null
                && !(RequalificationMark.read(text, null, asOf, specification) instanceof MarkReading.Unreadable);
        cells.refuse(LedgerColumn.LAST_TEST_MARK, early ? "TEST_BEFORE_MANUFACTURE" : "INVALID_MARK",
                early ? "a mark not before the original test in " + manufactured : accepted);
    }

    private @Nullable YearMonth bareMonth(Cells cells, @Nullable YearMonth manufactured) {
        var text = cells.text(LedgerColumn.LAST_TEST_MONTH, LONGEST_MARK);
        if (text == null) {
            return null;
        }
        switch (StampedMonth.read(text, asOf, null)) {
            case StampedMonth.Read(var month) -> {
                if (manufactured == null || !month.isBefore(manufactured)) {
                    return month;
                }
                cells.refuse(LedgerColumn.LAST_TEST_MONTH, "TEST_BEFORE_MANUFACTURE",
                        "a month not before the original test in " + manufactured);
            }
            case StampedMonth.Ambiguous(var months) -> cells.refuse(LedgerColumn.LAST_TEST_MONTH, "AMBIGUOUS_MONTH",
                    "one of " + months + ", written so");
            case StampedMonth.Unreadable(int _, var found, var expected, boolean future) -> cells.refuse(
                    LedgerColumn.LAST_TEST_MONTH, future ? "IN_THE_FUTURE" : "INVALID_MONTH",
                    expected + "; there stands " + found);
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
