package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Caution;
import org.collarbook.platform.CalendarFile;
import org.collarbook.schedule.CalendarRows.Counted;
import org.springframework.stereotype.Component;

import net.fortuna.ical4j.model.component.CalendarComponent;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.component.VToDo;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;

/** The schedule as a calendar (RFC 5545): an all-day event for each site and month, on the month's last day. */
@Component
class ScheduleCalendar {

    private final CalendarRows rows;

    ScheduleCalendar(CalendarRows rows) {
        this.rows = rows;
    }

    List<CalendarComponent> events(Source source, ScheduleFilter filter) {
        var groups = new LinkedHashMap<String, List<Counted>>();
        rows.count(source, filter)
                .forEach(row -> groups.computeIfAbsent(uid(filter, row), _ -> new ArrayList<>()).add(row));
        var events = new ArrayList<CalendarComponent>();
        groups.forEach((uid, counted) -> events.add(event(source, uid, counted)));
        // a calendar holds at least one thing
        return events.isEmpty() ? List.of(nothing(source, filter)) : events;
    }

    void write(List<CalendarComponent> events, OutputStream out) throws IOException {
        CalendarFile.write("Schedule", events, out);
    }

    private CalendarComponent event(Source source, String uid, List<Counted> counted) {
        var event = new VEvent(false);
        event.add(new Uid(uid));
        event.add(new DtStamp(source.now().toInstant()));
        event.add(new DtStart<>(counted.getFirst().lastDay()));
        event.add(new Summary(EventText.summary(counted)));
        event.add(new Description(EventText.description(counted)));
        event.add(ImmutableTransp.TRANSPARENT);
        return event;
    }

    private CalendarComponent nothing(Source source, ScheduleFilter filter) {
        var task = new VToDo(false);
        task.add(new Uid("schedule-nothing-" + part(filter) + "@collarbook"));
        task.add(new DtStamp(source.now().toInstant()));
        task.add(new Summary("Nothing with a known month falls due"));
        task.add(new Description(Caution.TEXT));
        return task;
    }

    /**
     * The same at each download. What is asked of some containers only has events of its own: they must not take the
     * place of those that tell of all.
     */
    private static String uid(ScheduleFilter filter, Counted row) {
        var some = filter.ofContainers();
        return "schedule-" + (row.siteId() == null ? "no-place" : row.siteId()) + "-" + row.month()
                + (some.equals(ScheduleFilter.EVERYTHING) ? "" : "-" + part(some)) + "@collarbook";
    }

    private static UUID part(ScheduleFilter filter) {
        return UUID.nameUUIDFromBytes(filter.parameters().toString().getBytes(StandardCharsets.UTF_8));
    }
}
