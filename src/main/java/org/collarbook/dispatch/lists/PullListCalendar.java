package org.collarbook.dispatch.lists;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.platform.CalendarFile;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

import net.fortuna.ical4j.model.component.CalendarComponent;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.component.VToDo;
import net.fortuna.ical4j.model.property.Description;
import net.fortuna.ical4j.model.property.DtStamp;
import net.fortuna.ical4j.model.property.DtStart;
import net.fortuna.ical4j.model.property.Location;
import net.fortuna.ical4j.model.property.Summary;
import net.fortuna.ical4j.model.property.Uid;
import net.fortuna.ical4j.model.property.immutable.ImmutableTransp;

/** The pull list as a calendar (RFC 5545): an all-day event for each route and day on which something comes back. */
@Component
class PullListCalendar {

    private final Clock clock;

    PullListCalendar(Clock clock) {
        this.clock = clock;
    }

    /** One route on one day; the route is null where no name of it is known. */
    private record Call(LocalDate day, @Nullable String route) {

        static final Comparator<Call> ORDER = Comparator.comparing(Call::day).thenComparing(Call::route,
                Comparator.nullsLast(Comparator.naturalOrder()));
    }

    void write(PullList list, OutputStream out) throws IOException {
        CalendarFile.write("Pull list", components(list), out);
    }

    private List<CalendarComponent> components(PullList list) {
        var calls = new TreeMap<Call, List<PullList.Stop>>(Call.ORDER);
        var unplaced = new ArrayList<PullList.Stop>();
        for (var stop : list.stops()) {
            if (stop.visit() == null) {
                unplaced.add(stop);
            } else {
                calls.computeIfAbsent(new Call(stop.visit(), route(list, stop)), _ -> new ArrayList<>()).add(stop);
            }
        }
        var day = list.asked().visit();
        if (list.stops().isEmpty() && day != null) {
            calls.put(new Call(day, route(list, null)), List.of());
        }
        var events = new ArrayList<CalendarComponent>();
        calls.forEach((call, stops) -> {
            boolean last = call.equals(calls.lastKey());
            events.add(event(list, call, new CalendarText(list, stops, last ? unplaced : List.of())));
        });
        // a calendar holds at least one thing, and what no visit is known for must not be silence
        return events.isEmpty() ? List.of(noDay(list, new CalendarText(list, List.of(), unplaced))) : events;
    }

    private static @Nullable String route(PullList list, PullList.@Nullable Stop stop) {
        if (stop != null && stop.route() != null) {
            return stop.route();
        }
        var route = list.asked().route();
        return route == null ? null : route.code();
    }

    private CalendarComponent event(PullList list, Call call, CalendarText text) {
        var event = new VEvent(false);
        event.add(new Uid(uid(list.asked(), call.route(), call.day())));
        event.add(new DtStamp(clock.instant()));
        event.add(new DtStart<>(call.day()));
        event.add(new Summary(text.summary(call.route() == null ? "Pull list" : "Route " + call.route())));
        event.add(new Description(text.description()));
        event.add(ImmutableTransp.TRANSPARENT);
        var route = list.asked().route();
        if (route != null) {
            event.add(new Location(CalendarText.place(route.depot())));
        }
        return event;
    }

    private CalendarComponent noDay(PullList list, CalendarText text) {
        var task = new VToDo(false);
        task.add(new Uid(uid(list.asked(), null, null)));
        task.add(new DtStamp(clock.instant()));
        task.add(new Summary(CalendarFile.plain(list.asked().title()) + ": no visit known"));
        task.add(new Description(text.description()));
        return task;
    }

    /**
     * The same at each download. Another list than the route's own, such as a customer's, has other events: they must
     * not take the place of the route's, for they tell less.
     */
    private static String uid(PullList.Asked asked, @Nullable String route, @Nullable LocalDate day) {
        var of = asked.route() == null
                ? UUID.nameUUIDFromBytes((asked.title() + "\n" + route).getBytes(StandardCharsets.UTF_8))
                : asked.route().id();
        return "pull-list-" + of + "-" + (day == null ? "no-day" : day) + "@collarbook";
    }
}
