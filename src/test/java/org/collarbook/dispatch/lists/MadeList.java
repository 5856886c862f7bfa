package org.collarbook.dispatch.lists;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;

import org.collarbook.dispatch.lists.PullList.Action;
import org.collarbook.dispatch.lists.PullList.Asked;
import org.collarbook.dispatch.lists.PullList.Claim;
import org.collarbook.dispatch.lists.PullList.Disputed;
import org.collarbook.dispatch.lists.PullList.FollowedPlan;
import org.collarbook.dispatch.lists.PullList.NamedRoute;
import org.collarbook.dispatch.lists.PullList.NamedSite;
import org.collarbook.dispatch.lists.PullList.Pulled;
import org.collarbook.dispatch.lists.PullList.SizeTotal;
import org.collarbook.dispatch.lists.PullList.Stop;
import org.collarbook.dispatch.lists.PullList.ToLookInto;
import org.collarbook.dispatch.lists.PullList.Why;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/** Pull lists of a made-up scenario: a normal route, an empty one, a nasty one, and one of any length. */
final class MadeList {

    static final LocalDate THURSDAY = LocalDate.of(2026, 12, 3);
    static final NamedSite DEPOT = site("D-1", "Harrow Hill depot", "1 Cinder Lane, Harrow Hill");
    private static final NamedSite TRUCK = site("T-7", "Cage truck 7", null);
    private static final Citation CITATION = new Citation("49 CFR", "180.209(g)", "2024-10-01",
            LocalDate.of(2021, 1, 1), null, "https://www.ecfr.gov/current/title-49/section-180.209",
            LocalDate.of(2026, 7, 1), LocalDate.of(2026, 7, 1), Basis.TEXT);
    private static final List<String> SIZES = List.of("20 lb", "33.5 lb", "100 lb");

    private final Random random;
    private int made;

    private MadeList(long seed) {
        this.random = new Random(seed);
    }

    /** Eight stops, 25 containers that come back, 3 to look into. */
    static PullList normal() {
        var maker = new MadeList(1);
        var names = List.of("Elm Fork Hardware", "Juniper Street Store", "Old Quarry Campground", "Two Ponds Farm",
                "Marsh Road Garage", "Larkspur School Kitchen", "Fairground Caterers", "Ridge End Cabins");
        var counts = List.of(4, 6, 2, 3, 1, 5, 3, 1);
        var stops = new ArrayList<Stop>();
        for (int i = 0; i < names.size(); i++) {
            var site = site("S-" + (101 + i), names.get(i), (12 + 7 * i) + " County Road " + (3 + i));
            var rows = IntStream.range(0, counts.get(i)).mapToObj(_ -> maker.cylinder()).toList();
            stops.add(new Stop(i + 1, "N-2", site, THURSDAY, THURSDAY.plusWeeks(2), rows,
                    i == 2
                            ? List.of(maker.unknown(), maker.unknown())
                            : i == 5 ? List.of(maker.unknown()) : List.of()));
        }
        return list("Route N-2, north loop", THURSDAY, stops, List.of(), new FollowedPlan(id(9), 12));
    }

    static PullList empty() {
        return list("Route N-2, north loop", THURSDAY, List.of(), List.of(), null);
    }

    /** Whatever may go wrong on a sheet: see what it is made of. */
    static PullList nasty() {
        var maker = new MadeList(2);
        var stops = new ArrayList<Stop>();
        stops.add(new Stop(1, "N-2", site("S-ÉÈ", "Café Łódź & Sons – Żółć Propane Exchange, formerly the Grand Old"
                + " Emporium of Everything Under One Roof at the Crossroads", null), THURSDAY, null,
                List.of(maker.with("ON_HOLD", "Ł-ÇÉ 0042", "漢字-7", null), maker.with("CONDEMNED", "A".repeat(60),
                        "(8003)04012345678901SERIAL0000000001", null),
                        maker.with("REJECTED", "漢-0815", null, YearMonth.of(2026, 11)),
                        maker.with("OVERDUE", "X".repeat(28), "T".repeat(60), YearMonth.of(2026, 9)), maker.tank()),
                List.of(maker.unknown())));
        stops.add(new Stop(null, null, site("S-2", "S-2", "A very long address, ".repeat(12)), null, null,
                List.of(), IntStream.range(0, 14).mapToObj(_ -> maker.unknown()).toList()));
        for (int i = 3; i <= 60; i++) {
            var rows = IntStream.range(0, i == 7 ? 25 : 1).mapToObj(_ -> maker.cylinder()).toList();
            stops.add(new Stop(i, "N-2", site("S-" + i, "Stop " + i, i + " Mill Lane"), THURSDAY, THURSDAY.plusDays(i),
                    rows, List.of()));
        }
        var disputed = IntStream.range(0, 3).mapToObj(_ -> maker.disputed()).toList();
        return list("Route N-2, the north loop by way of " + "Upper and Lower ".repeat(8) + "Wickham; Ängelholm, 漢",
                THURSDAY, stops, disputed, null);
    }

    /** Of stops with 20 containers each, or of one alone. */
    static PullList of(int containers, boolean oneStop) {
        var maker = new MadeList(3);
        int each = oneStop ? containers : 20;
        var stops = IntStream.range(0, containers / each).mapToObj(i -> new Stop(i + 1, "N-2",
                site("S-" + i, "Stop " + i, i + " Mill Lane"), THURSDAY, THURSDAY.plusWeeks(2),
                IntStream.range(0, each).mapToObj(_ -> maker.cylinder()).toList(), List.of())).toList();
        return list("Route N-2, north loop", THURSDAY, stops, List.of(), null);
    }

    static PullList list(String title, @Nullable LocalDate visit, List<Stop> stops, List<Disputed> disputed,
            @Nullable FollowedPlan plan) {
        var route = new NamedRoute(id(1), "N-2", "north loop", DEPOT, plan == null ? null : TRUCK);
        return new PullList(new Asked(title, route, visit, null), stops,
                (int) stops.stream().mapToLong(stop -> stop.containers().size()).sum(), sizes(stops, plan != null),
                disputed, plan, Caution.TEXT);
    }

    private static List<SizeTotal> sizes(List<Stop> stops, boolean known) {
        Map<String, Long> counts = new LinkedHashMap<>();
        stops.stream().flatMap(stop -> stop.containers().stream()).filter(one -> one.action() == Action.SWAP)
                .forEach(one -> counts.merge(one.size(), 1L, Long::sum));
        return counts.entrySet().stream().map(size -> {
            long load = size.getValue();
            long rack = size.getKey().equals("100 lb") ? 4 : 30;
            return known
                    ? new SizeTotal(size.getKey(), load, 10L, Math.max(0, load - 10), (int) rack,
                            Math.max(0, load - rack))
                    : new SizeTotal(size.getKey(), load, null, null, null, null);
        }).toList();
    }

    static NamedSite site(String code, String name, @Nullable String address) {
        return new NamedSite(UUID.nameUUIDFromBytes(code.getBytes(StandardCharsets.UTF_8)), code, name,
                address);
    }

    private static UUID id(long number) {
        return new UUID(0x4000L, 0x8000_0000_0000_0000L | number);
    }

    Pulled cylinder() {
        int kind = random.nextInt(10);
        var tag = random.nextInt(4) == 0 ? null : "CB" + (100_000 + made);
        var serial = "R" + (700_000 + random.nextInt(99_999));
        return kind == 0
                ? with("ON_HOLD", serial, tag, YearMonth.of(2027, 3))
                : kind < 4
                        ? with("OVERDUE", serial, tag, YearMonth.of(2026, 10))
                        : with("IN_DATE", serial, tag, YearMonth.of(2026, 12));
    }

    Pulled with(String status, String serial, @Nullable String tag, @Nullable YearMonth due) {
        var maker = random.nextInt(5) == 0 ? null : "M" + (4000 + random.nextInt(20));
        return new Pulled(id(1000 + made++), Action.SWAP, "CYLINDER", "DOT-4BA240", maker, serial,
                status.equals("REJECTED") ? null : YearMonth.of(2004, 5), SIZES.get(random.nextInt(SIZES.size())), tag,
                status, "SHELL", "US", due, due == null ? null : due.atEndOfMonth(), why(status, due),
                List.of("Dents, gouges and fire damage.", "The collar can be read.",
                        "The valve is closed and plugged."));
    }

    private static Why why(String status, @Nullable YearMonth due) {
        var text = switch (status) {
            case "ON_HOLD" -> "A hold stands: leak found at the valve. It must not be filled until that is lifted.";
            case "CONDEMNED" -> "It is condemned for good: not to be filled, used or repaired.";
            case "REJECTED" -> "It was rejected at an inspection and not repaired since.";
            case "OVERDUE" -> "It is past its last day, and nothing says that it was filled in time.";
            default -> "Its last day lies before the visit after this one, 2026-12-17.";
        };
        return new Why(status, text, null, due == null ? null : CITATION);
    }

    private Pulled tank() {
        return new Pulled(id(1000 + made++), Action.WORK_AT_SITE, "STATIONARY_TANK", "ASME", "M4100", "NB 77120",
                YearMonth.of(1998, 6), "500 gal", null, "OVERDUE", "RELIEF_VALVE", null, YearMonth.of(2026, 8), null,
                new Why("OVERDUE",
                        "The relief valve is overdue. " + "It is to be replaced by an approved person. ".repeat(6),
                        null, null),
                List.of());
    }

    ToLookInto unknown() {
        int number = made++;
        return new ToLookInto(id(1000 + number), "CYLINDER", "DOT-4BW240", null, "U" + (50_000 + number), "100 lb",
                number % 2 == 0 ? null : "CB" + (100_000 + number),
                List.of("month of the last requalification", "its method mark (E, S or none)"));
    }

    private Disputed disputed() {
        int number = made++;
        return new Disputed(id(1000 + number), "CYLINDER", "DOT-4BA240", "M4001", "Q" + (90_000 + number), "20 lb",
                "CB" + (100_000 + number), "OVERDUE", YearMonth.of(2026, 9), LocalDate.of(2026, 9, 30),
                List.of("Two places claim it: scan where it stands."),
                List.of(new Claim(site("S-4", "Stop 4", "4 Mill Lane"), true,
                        Instant.parse("2026-11-03T14:20:00Z")),
                        new Claim(DEPOT, false, Instant.parse("2026-11-05T08:02:00Z"))));
    }
}
