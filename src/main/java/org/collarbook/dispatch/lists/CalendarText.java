package org.collarbook.dispatch.lists;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.dispatch.lists.PullList.Action;
import org.collarbook.platform.CalendarFile;

/**
 * The words of one event. A calendar is for a glance, so a stop has one line, and not every stop has one; stops for
 * which no visit is known ({@code unplaced}) are counted.
 */
record CalendarText(PullList list, List<PullList.Stop> stops, List<PullList.Stop> unplaced) {

    /** A description longer than this is read by nobody on a telephone. */
    static final int MOST_STOPS = 40;

    String summary(String of) {
        var parts = new ArrayList<String>();
        parts.add(comesBack(stops) == 0 ? "nothing to bring back" : comesBack(stops) + " to bring back");
        long work = pulled(stops).count() - comesBack(stops);
        if (work > 0) {
            parts.add(work + " to work on at the site");
        }
        if (looks(stops) > 0) {
            parts.add(looks(stops) + " to look into");
        }
        if (!list.placeDisputed().isEmpty()) {
            parts.add(list.placeDisputed().size() + " in dispute");
        }
        return CalendarFile.plain(of) + ": " + String.join(", ", parts);
    }

    String description() {
        var lines = new ArrayList<String>();
        load(lines);
        stops.stream().limit(MOST_STOPS).map(CalendarText::line).forEach(lines::add);
        if (stops.size() > MOST_STOPS) {
            lines.add("and " + ListWords.count(stops.size() - MOST_STOPS, "more stop", "more stops"));
        }
        if (!unplaced.isEmpty()) {
            lines.add("Not in this calendar, for no visit is known: "
                    + ListWords.count(unplaced.size(), "stop", "stops") + " with " + pulled(unplaced).count()
                    + " on the list and " + looks(unplaced) + " to look into.");
        }
        if (!list.placeDisputed().isEmpty()) {
            lines.add(list.placeDisputed().size() + " whose place is in dispute: see the list.");
        }
        lines.add(list.caution());
        return String.join("\n", lines);
    }

    /** Stock and rack are those of the whole list, so they are told where the event is the whole list. */
    private void load(List<String> lines) {
        if (stops.isEmpty() || stops.size() == list.stops().size()) {
            list.sizes().forEach(size -> lines.add("Load " + size.load() + " × " + CalendarFile.plain(size.size())
                    + "; in date at the depot " + ListWords.number(size.inDateAtDepot()) + ", short "
                    + ListWords.number(size.shortfall()) + ", over the rack "
                    + ListWords.number(size.overRack())));
            return;
        }
        var swapped = pulled(stops).filter(one -> one.action() == Action.SWAP).toList();
        lines.add("Load " + (swapped.isEmpty() ? "nothing" : CalendarFile.plain(ListWords.bySize(swapped)))
                + "; stock and rack: see the list.");
    }

    private static String line(PullList.Stop stop) {
        var number = stop.position() == null ? "" : stop.position() + ". ";
        var counts = new ArrayList<String>();
        if (!stop.containers().isEmpty()) {
            counts.add(CalendarFile.plain(ListWords.bySize(stop.containers())));
        }
        if (!stop.undetermined().isEmpty()) {
            counts.add(stop.undetermined().size() + " to look into");
        }
        return number + CalendarFile.plain(stop.site().name()) + ": "
                + (counts.isEmpty() ? "nothing" : String.join(", ", counts));
    }

    static String place(PullList.NamedSite site) {
        return CalendarFile.plain(ListWords.named(site) + (site.address() == null ? "" : ", " + site.address()));
    }

    private static Stream<PullList.Pulled> pulled(List<PullList.Stop> stops) {
        return stops.stream().flatMap(stop -> stop.containers().stream());
    }

    private static long comesBack(List<PullList.Stop> stops) {
        return pulled(stops).filter(one -> one.action() != Action.WORK_AT_SITE).count();
    }

    private static long looks(List<PullList.Stop> stops) {
        return stops.stream().mapToLong(stop -> stop.undetermined().size()).sum();
    }
}
