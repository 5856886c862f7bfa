package org.collarbook.compliance;

import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;

/** A time during which a tank was out of service; while it is, that keeps it out as a hold does. */
record Stopped(LocalDate since, @Nullable LocalDate returnedOn, String reason) {

    /** Written by the statement as day, day of return, reason; by day. */
    static Stopped parse(String text) {
        var part = text.split(",", 3);
        return new Stopped(LocalDate.parse(part[0]), part[1].isEmpty() ? null : LocalDate.parse(part[1]), part[2]);
    }

    static Stream<StandingHold> hold(List<Stopped> stops) {
        return stops.stream().filter(stop -> stop.returnedOn == null)
                .map(stop -> new StandingHold("OUT_OF_SERVICE", stop.since, "Out of service since " + stop.since + ": "
                        + stop.reason, null));
    }

    /**
     * What a rule on long stops asks about: the one that stands, or else the last that lasted a year, 49 CFR
     * 180.407(b)(3), whose test may still be to come. Without any record what was declared counts.
     */
    static @Nullable LocalDate since(List<Stopped> stops, @Nullable LocalDate declared) {
        return stops.isEmpty()
                ? declared
                : stops.reversed().stream()
                        .filter(stop -> stop.returnedOn == null || !stop.returnedOn.isBefore(stop.since.plusYears(1)))
                        .findFirst().map(Stopped::since).orElse(null);
    }
}
