package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/**
 * Reads the tests beside the last mark: each a mark as stamped, or its month or day and how it was tested. What begins
 * with a year, a dash and a month is never read as a mark.
 */
final class OtherTestsReader {

    static final Pattern WRITTEN_OUT = Pattern.compile("(\\d{4}-\\d{2}(?:-\\d{2})?)(?: (.+))?");
    private static final Set<String> WORDS = Set.of("rin", "star", "plus", "rejected", "condemned", "declared",
            "stamped");
    private static final int LONGEST_MARK = 60;
    private static final String ACCEPTED = "tests apart by ;, each a mark as stamped, or YYYY-MM (or the day) and how it"
            + " was tested: " + Arrays.stream(Method.values()).map(Constants::word).collect(Collectors.joining(", "))
            + "; where known | RIN B045 (or | RIN seen) | star | plus | rejected | condemned | stamped and the mark"
            + " | declared and which of the row's declarations, 1 being the first";

    private final Cells cells;
    private final Days days;
    private final Collar collar;
    private final int declarations;

    OtherTestsReader(Cells cells, Days days, Collar collar, int declarations) {
        this.cells = cells;
        this.days = days;
        this.collar = collar;
        this.declarations = declarations;
    }

    List<LastTest> read() {
        var tests = new ArrayList<LastTest>();
        for (var item : cells.list(LedgerColumn.OTHER_TESTS, ACCEPTED)) {
            if (WORDS.containsAll(item.more().keySet()) && hasPlainWords(item)) {
                tests.addAll(tests(item));
            } else {
                refuse("INVALID_TEST", item.head());
            }
        }
        return tests;
    }

    private void refuse(String code, String found) {
        cells.problems().refuse(LedgerColumn.OTHER_TESTS, code, found, ACCEPTED);
    }

    private static boolean hasPlainWords(ListItem item) {
        return List.of("star", "plus", "rejected", "condemned").stream()
                .allMatch(word -> item.get(word) == null || "".equals(item.get(word)))
                && !(item.more().containsKey("rejected") && item.more().containsKey("condemned"))
                && PartsReader.isText(item.get("stamped"), LONGEST_MARK);
    }

    private List<LastTest> tests(ListItem item) {
        var told = item.get("rin");
        var rin = told == null || told.equalsIgnoreCase("seen") ? null : rin(told);
        boolean rinSeen = "seen".equalsIgnoreCase(told);
        int declared = declared(item);
        if (told != null && !rinSeen && rin == null || declared < 0) {
            refuse(declared < 0 ? "UNKNOWN_DECLARATION" : "INVALID_RIN", declared < 0 ? item.get("declared") : told);
            return List.of();
        }
        var result = item.more().containsKey("condemned")
                ? Result.CONDEMNED
                : item.more().containsKey("rejected") ? Result.REJECTED : Result.PASSED;
        var shape = WRITTEN_OUT.matcher(item.head());
        if (shape.matches()) {
            return writtenOut(item, shape.group(1), shape.group(2), new Beside(rin, rinSeen, result, declared));
        }
        return stamped(item, new Beside(rin, rinSeen, result, declared));
    }

    private record Beside(@Nullable Rin rin, boolean rinSeen, Result result, int declared) {}

    private List<LastTest> stamped(ListItem item, Beside beside) {
        var mark = item.head().length() > LONGEST_MARK || item.get("stamped") != null || item.get("star") != null
                || item.get("plus") != null
                        ? null
                        : LastTestReader.mark(cells, LedgerColumn.OTHER_TESTS, item.head(), collar);
        if (mark == null) {
            if (!cells.problems().areKeepingOut()) {
                refuse("INVALID_TEST", item.head());
            }
            return List.of();
        }
        if (beside.rin != null && mark.rin() != null && !beside.rin.equals(mark.rin())) {
            refuse("CONTRADICTS_MARK", item.head());
        }
        return mark.requalifications().stream().map(one -> new LastTest(new Requalification(one.month(), one.method(),
                one.star(), one.plus(), one.rin() == null ? beside.rin : one.rin(), beside.rinSeen, beside.result),
                null,
                item.head(), beside.declared)).toList();
    }

    private List<LastTest> writtenOut(ListItem item, String when, @Nullable String how, Beside beside) {
        var day = Days.day(when);
        var month = day == null ? Days.month(when) : YearMonth.from(day);
        var method = Constants.of(how, Method.class);
        if (month == null || how != null && method == null) {
            refuse(month == null ? "INVALID_DATE" : "UNKNOWN_METHOD", item.head());
            return List.of();
        }
        if (!isPossible(month, day)) {
            return List.of();
        }
        return List.of(new LastTest(new Requalification(month, method, item.get("star") != null,
                item.get("plus") != null, beside.rin, beside.rinSeen, beside.result), day, item.get("stamped"),
                beside.declared));
    }

    private boolean isPossible(YearMonth month, @Nullable LocalDate day) {
        if (collar.manufactured() != null && month.isBefore(collar.manufactured())) {
            cells.problems().refuse(LedgerColumn.OTHER_TESTS, "TEST_BEFORE_MANUFACTURE", month.toString(),
                    "a month not before " + collar.manufactured());
            return false;
        }
        return days.admit(cells, LedgerColumn.OTHER_TESTS, day == null ? month.atDay(1) : day);
    }

    private static @Nullable Rin rin(String text) {
        return Rin.tryParse(text) instanceof Parsed<Rin>(var rin, var _) ? rin : null;
    }

    /** 0 where none of it is declared; below nothing for one that the row does not have. */
    private int declared(ListItem item) {
        var text = item.get("declared");
        if (text == null) {
            return LastTest.NOT_DECLARED;
        }
        int number = text.isEmpty() ? 1 : text.matches("\\d{1,3}") ? Integer.parseInt(text) : -1;
        return number >= 1 && number <= declarations ? number : -1;
    }
}
