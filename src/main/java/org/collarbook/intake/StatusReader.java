package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.collarbook.holds.HoldReason;
import org.collarbook.intake.Besides.GivenHold;
import org.collarbook.intake.Besides.Standing;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** Reads what a row says of a container's state, in the words of the reasons of holds and three more. */
final class StatusReader {

    static final String IN_SERVICE = "in service";
    private static final Pattern SHAPE = Pattern.compile("(?<word>.+?)(?:\\s+since\\s+(?<since>\\S+))?");
    private static final int LONGEST_NOTE = 1000;
    private static final String WORDS = "one or more, apart by ;, of " + IN_SERVICE + ", condemned, rejected, "
            + Arrays.stream(HoldReason.values()).map(Constants::word).collect(Collectors.joining(", "))
            + "; with since and a day where that is known";
    private static final String LISTED = WORDS + "; and | note and a text behind it";

    record Status(boolean inService, List<GivenHold> holds, List<Standing> standing) {

        static final Status UNTOLD = new Status(false, List.of(), List.of());
    }

    private StatusReader() {}

    /** All that the column knows. */
    static List<String> words() {
        var words = new ArrayList<>(List.of(IN_SERVICE, "condemned", "rejected"));
        Arrays.stream(HoldReason.values()).map(Constants::word).forEach(words::add);
        return List.copyOf(words);
    }

    /** The words in a cell, without days and notes. */
    static List<String> wordsIn(String text) {
        return Arrays.stream(text.toLowerCase(Locale.ROOT).split(";"))
                .map(item -> item.replaceFirst("(?s)\\|.*| since .*", "").replaceAll("[\\s_-]+", " ").strip()).toList();
    }

    static Status read(Cells cells, @Nullable Specification specification, Days days) {
        var items = cells.list(LedgerColumn.STATUS, LISTED);
        if (items.stream().anyMatch(item -> !Set.of("note").containsAll(item.more().keySet()))) {
            cells.refuse(LedgerColumn.STATUS, "INVALID_LIST", LISTED);
            return Status.UNTOLD;
        }
        var holds = new ArrayList<GivenHold>();
        var standing = new ArrayList<Standing>();
        boolean inService = false;
        for (var item : items) {
            inService |= add(cells, item, specification, days, holds, standing);
        }
        if (inService && items.size() > 1) {
            cells.refuse(LedgerColumn.STATUS, "CONTRADICTS_STATUS",
                    IN_SERVICE + " by itself: it says that nothing keeps"
                            + " the container out");
        }
        return new Status(inService, List.copyOf(holds), List.copyOf(standing));
    }

    /** Whether it says that the container is in service. */
    private static boolean add(Cells cells, ListItem item, @Nullable Specification specification, Days days,
            List<GivenHold> holds, List<Standing> standing) {
        var shape = SHAPE.matcher(item.head());
        var word = shape.matches() ? shape.group("word").toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ") : "";
        if (word.equals(IN_SERVICE) && shape.group("since") == null && item.more().isEmpty()) {
            return true;
        }
        var reason = Arrays.stream(HoldReason.values()).filter(one -> Constants.word(one).equals(word)).findFirst()
                .orElse(null);
        boolean condemned = word.equals("condemned");
        if (reason == null && !condemned && !word.equals("rejected")) {
            cells.problems().refuse(LedgerColumn.STATUS, "UNKNOWN_WORD", item.head(), WORDS);
            return false;
        }
        var month = Days.month(shape.group("since"));
        var since = month == null ? since(cells, shape.group("since"), days) : first(cells, month, days);
        if (reason == null || specification != null && reason.condemns(specification)) {
            standing.add(new Standing(reason != null || condemned, YearMonth.from(since == null ? days.asOf() : since),
                    since != null));
        } else {
            holds.add(new GivenHold(reason, since, note(cells, item)));
        }
        return false;
    }

    private static @Nullable String note(Cells cells, ListItem item) {
        var note = item.get("note");
        if (note != null && (note.isEmpty() || note.length() > LONGEST_NOTE
                || note.codePoints().anyMatch(Character::isISOControl))) {
            cells.refuse(LedgerColumn.STATUS, "INVALID_TEXT", "a note of 1 to " + LONGEST_NOTE
                    + " printable characters");
            return null;
        }
        return note;
    }

    private static @Nullable LocalDate since(Cells cells, @Nullable String text, Days days) {
        var day = Days.day(text);
        if (text != null && day == null) {
            cells.problems().refuse(LedgerColumn.STATUS, "INVALID_DATE", text, "since a day as YYYY-MM-DD, or a month");
        }
        return day != null && days.admit(cells, LedgerColumn.STATUS, day) ? day : null;
    }

    /** Of a month its first day: the sooner it stood, the more it forbids. */
    private static @Nullable LocalDate first(Cells cells, YearMonth month, Days days) {
        return days.admit(cells, LedgerColumn.STATUS, month.atDay(1)) ? month.atDay(1) : null;
    }
}
