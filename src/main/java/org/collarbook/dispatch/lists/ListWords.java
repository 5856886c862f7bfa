package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/** How a list says days, counts and what nobody knows: the same on paper and in a calendar. */
final class ListWords {

    static final String UNKNOWN = "not known";

    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE, MMMM d, uuuu", Locale.US);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE, MMM d, uuuu", Locale.US);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("MMM d, uuuu", Locale.US);
    private static final DateTimeFormatter MONTH = DateTimeFormatter.ofPattern("MMM uuuu", Locale.US);

    private ListWords() {}

    static String longDay(LocalDate day) {
        return LONG.format(day);
    }

    static String day(@Nullable LocalDate day) {
        return day == null ? UNKNOWN : SHORT.format(day);
    }

    static String date(@Nullable LocalDate day) {
        return day == null ? UNKNOWN : DATE.format(day);
    }

    static String month(@Nullable YearMonth month) {
        return month == null ? UNKNOWN : MONTH.format(month);
    }

    static String number(@Nullable Number number) {
        return number == null ? UNKNOWN : number.toString();
    }

    static String named(PullList.NamedSite site) {
        return site.code().equals(site.name()) ? site.name() : site.code() + ", " + site.name();
    }

    static String visits(PullList.Stop stop) {
        if (stop.visit() == null) {
            return "no visit known";
        }
        return "next here " + day(stop.visit()) + "; "
                + (stop.next() == null ? "no later visit known" : "then " + day(stop.next()));
    }

    /** A constant of the interface as a person reads it: {@code ON_HOLD} is "on hold". */
    static String plain(String constant) {
        return constant.replace('_', ' ').toLowerCase(Locale.ROOT);
    }

    static String action(PullList.Action action) {
        return switch (action) {
            case SWAP -> "Swap";
            case BRING_IN -> "Bring in";
            case WORK_AT_SITE -> "Work at site";
        };
    }

    static String count(long count, String one, String many) {
        return count + " " + (count == 1 ? one : many);
    }

    /** Such as "3 × 20 lb, 1 × 100 lb". */
    static String bySize(List<PullList.Pulled> containers) {
        Map<String, Long> counts = containers.stream().collect(
                Collectors.groupingBy(PullList.Pulled::size, LinkedHashMap::new, Collectors.counting()));
        return counts.entrySet().stream().map(entry -> entry.getValue() + " × " + entry.getKey())
                .collect(Collectors.joining(", "));
    }
}
