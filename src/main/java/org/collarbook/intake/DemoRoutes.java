package org.collarbook.intake;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.temporal.TemporalAdjusters;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;

import org.collarbook.custody.routes.ExceptionKind;
import org.collarbook.custody.routes.Holidays;
import org.collarbook.custody.routes.Racks;
import org.collarbook.custody.routes.RouteContent;
import org.collarbook.custody.routes.Routes;
import org.collarbook.custody.routes.VisitRule;
import org.collarbook.platform.Revision;
import org.collarbook.registry.Size;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** How the invented distributor drives: its routes, what its trucks carry, and the days on which nobody comes. */
@Component
class DemoRoutes {

    /** At these nobody calls, so that what cannot be planned is seen, too. */
    private static final int WITHOUT_A_ROUTE = 2;
    private static final int WEEKS_AGO = 8;

    private record Invented(String code, String name, String rule, int truck) {}

    private static final List<Invented> ROUTES = List.of(
            new Invented("W-TUE", "Brackenholt ring", "FREQ=WEEKLY;BYDAY=TU", 1),
            new Invented("W-THU", "Velmora side", "FREQ=WEEKLY;BYDAY=TH", 2),
            new Invented("F-WED", "Marrowby fields", "FREQ=WEEKLY;INTERVAL=2;BYDAY=WE", 1),
            new Invented("F-FRI", "Yarrowmere and the moor", "FREQ=WEEKLY;INTERVAL=2;BYDAY=FR", 2),
            new Invented("M-MON", "Wickenfold, far end", "FREQ=MONTHLY;BYDAY=1MO", 1));

    private final Routes routes;
    private final Racks racks;
    private final Holidays holidays;
    private final JdbcClient jdbc;

    DemoRoutes(Routes routes, Racks racks, Holidays holidays, JdbcClient jdbc) {
        this.routes = routes;
        this.racks = racks;
        this.holidays = holidays;
        this.jdbc = jdbc;
    }

    /** The sites are those of {@link InventedPlaces}, which the ledger has brought. */
    @Transactional
    void open(LocalDate today) {
        IntStream.rangeClosed(today.getYear(), today.getYear() + 1).forEach(this::nameHolidays);
        var sites = new HashMap<String, UUID>();
        jdbc.sql("select code, id from site").query(row -> {
            sites.put(row.getString(1), row.getObject(2, UUID.class));
        });
        var customers = sites.keySet().stream().filter(code -> code.startsWith("S-")).sorted().map(sites::get).toList();
        var visited = customers.subList(0, customers.size() - WITHOUT_A_ROUTE);
        var from = today.minusWeeks(WEEKS_AGO).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        for (int i = 0; i < ROUTES.size(); i++) {
            open(ROUTES.get(i), from, every(ROUTES.size(), i, visited), sites);
        }
        rack(sites.get("V-01"), Map.of("33.5 lb", 80, "20 lb", 24, "100 lb", 12, "420 lb", 0));
        rack(sites.get("V-02"), Map.of("33.5 lb", 60, "40 lb", 20));
        skipOne(today);
    }

    private static List<UUID> every(int nth, int first, List<UUID> sites) {
        return IntStream.range(0, sites.size()).filter(i -> i % nth == first).mapToObj(sites::get).toList();
    }

    private void open(Invented invented, LocalDate from, List<UUID> stops, Map<String, UUID> sites) {
        routes.open(new RouteContent(invented.code, invented.name, known(sites.get("D-01")),
                sites.get("V-0" + invented.truck), new VisitRule(invented.rule), from, false, stops));
    }

    private void rack(@Nullable UUID truck, Map<String, Integer> places) {
        var bySize = new HashMap<Size, Integer>();
        places.forEach((size, number) -> bySize.put(new Size(size), number));
        racks.set(known(truck), new Revision(0).etag(), bySize);
    }

    private static UUID known(@Nullable UUID site) {
        if (site == null) {
            throw new IllegalStateException("the demo's ledger brought no depot or truck");
        }
        return site;
    }

    /** So that a day which is not driven is seen. */
    private void skipOne(LocalDate today) {
        var fortnightly = jdbc.sql("select id from route where code = 'F-FRI'").query(UUID.class).single();
        routes.find(fortnightly).flatMap(route -> route.visits().next(today)).ifPresent(
                day -> routes.except(fortnightly, day, ExceptionKind.SKIPPED, "Truck 2 is in the workshop"));
    }

    /** Four of the legal public holidays of 5 U.S.C. 6103(a), from memory. */
    private void nameHolidays(int year) {
        holidays.name(LocalDate.of(year, Month.JANUARY, 1), "New Year's Day");
        holidays.name(LocalDate.of(year, Month.JULY, 4), "Independence Day");
        holidays.name(LocalDate.of(year, Month.NOVEMBER, 1)
                .with(TemporalAdjusters.dayOfWeekInMonth(4, DayOfWeek.THURSDAY)), "Thanksgiving Day");
        holidays.name(LocalDate.of(year, Month.DECEMBER, 25), "Christmas Day");
    }
}
