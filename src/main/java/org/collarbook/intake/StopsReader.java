package org.collarbook.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

import org.collarbook.intake.Besides.GivenStop;
import org.collarbook.regulation.ContainerKind;
import org.jspecify.annotations.Nullable;

/** Reads when a tank was out of service, and since when it is. */
final class StopsReader {

    private static final Pattern SHAPE = Pattern.compile("(?:since )?(\\S+)(?: to (\\S+))?");
    private static final String ACCEPTED = "of a tank, apart by ; and one after the other: YYYY-MM-DD to YYYY-MM-DD, or"
            + " since YYYY-MM-DD while it is out of service, each | reason and why | note; what keeps"
            + " a cylinder out stands under status";

    private StopsReader() {}

    static List<GivenStop> read(Cells cells, ContainerKind kind, Days days) {
        if (kind == ContainerKind.CYLINDER && !cells.isBlank(LedgerColumn.OUT_OF_SERVICE)) {
            cells.refuse(LedgerColumn.OUT_OF_SERVICE, "NOT_FOR_THIS_KIND", ACCEPTED);
            return List.of();
        }
        var items = cells.list(LedgerColumn.OUT_OF_SERVICE, ACCEPTED);
        var stops = new ArrayList<GivenStop>();
        for (var item : items) {
            var stop = stop(cells, item, days);
            if (stop != null) {
                stops.add(stop);
            }
        }
        if (stops.size() < items.size() || overlap(stops)) {
            cells.refuse(LedgerColumn.OUT_OF_SERVICE, "INVALID_LIST", ACCEPTED);
        }
        return stops;
    }

    private static @Nullable GivenStop stop(Cells cells, ListItem item, Days days) {
        var shape = SHAPE.matcher(item.head());
        var since = shape.matches() ? Days.day(shape.group(1)) : null;
        var end = shape.matches() ? shape.group(2) : null;
        var returned = Days.day(end);
        var reason = item.get("reason");
        var note = item.get("note");
        boolean readable = since != null && (end == null) == (returned == null) && reason != null
                && PartsReader.isText(reason, 500) && PartsReader.isText(note, 500) && (note == null || end != null)
                && Set.of("reason", "note").containsAll(item.more().keySet());
        return readable && days.admit(cells, LedgerColumn.OUT_OF_SERVICE, since)
                && (returned == null || !returned.isBefore(since)
                        && days.admit(cells, LedgerColumn.OUT_OF_SERVICE, returned))
                                ? new GivenStop(since, reason, returned, note)
                                : null;
    }

    private static boolean overlap(List<GivenStop> stops) {
        stops.sort(Comparator.comparing(GivenStop::since));
        for (int i = 1; i < stops.size(); i++) {
            LocalDate until = stops.get(i - 1).returnedOn();
            if (until == null || stops.get(i).since().isBefore(until)
                    || stops.get(i).since().equals(stops.get(i - 1).since())) {
                return true;
            }
        }
        return false;
    }
}
