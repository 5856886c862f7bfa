package org.collarbook.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.collarbook.platform.CalendarFile;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Status;
import org.collarbook.schedule.CalendarRows.Counted;

/** The words of one event: counts, for a calendar is for a glance. */
final class EventText {

    /** A description longer than this is read by nobody on a telephone. */
    static final int MOST_LINES = 30;

    private EventText() {}

    /** Such as "S7, Grange Road: 12 fall due (3 overdue)". */
    static String summary(List<Counted> counted) {
        Map<Status, Long> notable = counted.stream().filter(row -> isNotable(Status.valueOf(row.status())))
                .collect(Collectors.groupingBy(row -> Status.valueOf(row.status()), TreeMap::new,
                        Collectors.summingLong(Counted::count)));
        long all = counted.stream().mapToLong(Counted::count).sum();
        var words = notable.entrySet().stream().map(entry -> entry.getValue() + " " + word(entry.getKey().name()))
                .collect(Collectors.joining(", "));
        return CalendarFile.plain(place(counted.getFirst())) + ": " + all + (all == 1 ? " falls due" : " fall due")
                + (words.isEmpty() ? "" : " (" + words + ")");
    }

    private static boolean isNotable(Status status) {
        return switch (status) {
            case IN_DATE, DUE_THIS_MONTH, NOT_REQUIRED -> false;
            case CONDEMNED, REJECTED, ON_HOLD, UNDETERMINED, OTHER_AUTHORITY, OVERDUE, USE_UP -> true;
        };
    }

    static String description(List<Counted> counted) {
        var lines = new ArrayList<String>();
        counted.stream().limit(MOST_LINES).map(row -> row.count() + " × " + CalendarFile.plain(row.size()) + ": "
                + word(row.requirement()) + ", " + word(row.status())).forEach(lines::add);
        if (counted.size() > MOST_LINES) {
            lines.add("and " + counted.stream().skip(MOST_LINES).mapToLong(Counted::count).sum() + " more");
        }
        lines.add("What has no known month is in no calendar: see the list of what is undetermined.");
        lines.add(Caution.TEXT);
        return String.join("\n", lines);
    }

    private static String place(Counted row) {
        if (row.site() == null || row.siteName() == null) {
            return "No recorded place";
        }
        return row.site().equals(row.siteName()) ? row.site() : row.site() + ", " + row.siteName();
    }

    /** {@code ON_HOLD} is "on hold". */
    private static String word(String constant) {
        return constant.replace('_', ' ').toLowerCase(Locale.ROOT);
    }
}
