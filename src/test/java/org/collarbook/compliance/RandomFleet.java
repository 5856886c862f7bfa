package org.collarbook.compliance;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.Fill;
import org.collarbook.custody.Fills;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Containers of all kinds at sites of several jurisdictions, with histories, fills, and facts that are dated ahead. */
@TestComponent
public class RandomFleet {

    private static final Caller CALLER = new Caller(UUID.randomUUID(), "seeded", Set.of(Role.YARD),
            CustomerScope.EVERYONE);
    private static final Map<String, String> KINDS = Map.of("ASME", "STATIONARY_TANK", "MC-331", "CARGO_TANK", "DOT-51",
            "PORTABLE_TANK");

    private final Api api;
    private final Given given;
    private final Requalifications requalifications;
    private final Fills fills;
    private final Requirements requirements;
    private final TransactionTemplate transaction;
    private final JdbcClient jdbc;
    private Random random = new Random();
    /** Apart, so that the other facts are the same with and without holds. */
    private Random chance = new Random();

    RandomFleet(Api api, Given given, Requalifications requalifications, Fills fills, Requirements requirements,
            TransactionTemplate transaction, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.requalifications = requalifications;
        this.fills = fills;
        this.requirements = requirements;
        this.transaction = transaction;
        this.jdbc = jdbc;
    }

    public List<UUID> of(int containers, long seed) {
        random = new Random(seed);
        chance = new Random(seed + 1);
        var sites = List.of(given.site(given.customer()), given.site(null), siteIn("CA"), siteIn("CA-BC"),
                siteIn("UK"));
        var ids = new ArrayList<UUID>();
        for (int i = 0; i < containers; i++) {
            ids.add(container(sites.get(random.nextInt(10) < 7 ? random.nextInt(2) : 2 + random.nextInt(3))));
        }
        return ids;
    }

    private UUID siteIn(String jurisdiction) {
        var body = Given.depot();
        body.put("jurisdiction", jurisdiction);
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    private UUID container(UUID site) {
        var body = Given.cylinder();
        var specification = pick("DOT-4BA240", "DOT-4BW240", "DOT-4E240", "DOT-4B240ET", "DOT-3B300", "TC-4BAM17",
                "DOT-3HT1850", "DOT-3HT1850", "DOT-SP12345", "DOT-SP12345", "DOT-39", "MC-331", "MC-331", "DOT-51",
                "ASME");
        var made = YearMonth.of(1998, 1).plusMonths(random.nextInt(12 * 28));
        body.put("specification", specification);
        body.put("kind", KINDS.getOrDefault(specification, "CYLINDER"));
        body.put("manufactured", made.toString());
        body.put("tare", "17 lb");
        body.put("reliefValve", random.nextBoolean() ? null : pick("INTERNAL", "EXTERNAL"));
        body.put("schemeDue", random.nextInt(4) > 0 ? null : "2028-0" + (1 + random.nextInt(9)));
        body.put("outOfServiceSince", random.nextInt(6) > 0 ? null : day(-500, -1).toString());
        if (random.nextInt(5) > 0) {
            body.put("permit", Map.of("number", "SP12345", "expires", day(-200, 2500).toString(), "intervalYears", 5));
        }
        if (random.nextInt(10) == 0) {
            body.remove(pick("coated", "service", "manufactured", "collarRead"));
        }
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        hold(id);
        emptied(id);
        history(id, specification, made);
        if (random.nextInt(3) > 0) {
            fills.record(new Fill(id, random.nextInt(8) > 0 ? day(-2000, 0) : day(1, 900), null), CALLER);
        }
        return id;
    }

    /** One in four was found empty, of those some on a day ahead. */
    private void emptied(UUID id) {
        if (chance.nextInt(4) > 0) {
            return;
        }
        var day = TestClock.TODAY.plusDays(chance.nextInt(4) > 0 ? -chance.nextInt(900) : 1 + chance.nextInt(900));
        jdbc.sql("""
                insert into emptying (id, container_id, emptied_at, emptied_on, recorded_by) values (?, ?, ?, ?, ?)""")
                .params(UUID.randomUUID(), id, day.atTime(18, 0).atOffset(ZoneOffset.UTC), day, CALLER.id()).update();
    }

    /** One in ten is held, of those some from a day ahead, as a clock that was wrong has recorded it. */
    private void hold(UUID id) {
        if (chance.nextInt(10) > 0) {
            return;
        }
        var from = TestClock.TODAY.plusDays(chance.nextInt(3) > 0 ? -chance.nextInt(300) : 1 + chance.nextInt(900));
        jdbc.sql("""
                insert into hold (id, container_id, reason, occurred_at, recorded_by) values (?, ?, ?, ?, ?)""")
                .params(UUID.randomUUID(), id, chance.nextBoolean() ? "DENTED" : "LOST",
                        from.atTime(12, 0).atOffset(ZoneOffset.UTC), CALLER.id())
                .update();
    }

    /** Also results dated ahead, as a clock that was wrong has recorded them. */
    private void history(UUID id, String specification, YearMonth made) {
        var entries = new ArrayList<RequalificationEntry>();
        for (int tests = random.nextInt(KINDS.containsKey(specification) ? 9 : 3); tests > 0; tests--) {
            var month = YearMonth.from(TestClock.TODAY).minusMonths(random.nextInt(90));
            boolean bad = random.nextInt(20) == 0;
            entries.add(entry(id, made.isBefore(month) ? month : made.plusMonths(1), method(specification),
                    bad ? Result.values()[random.nextInt(3)] : Result.PASSED));
        }
        if (random.nextInt(12) == 0) {
            entries.add(entry(id, YearMonth.from(day(40, 1500)), method(specification),
                    Result.values()[random.nextInt(3)]));
        }
        transaction.executeWithoutResult(status -> {
            requalifications.insert(entries, CALLER.id());
            requirements.reassess(List.of(id));
        });
    }

    private static RequalificationEntry entry(UUID id, YearMonth month, @Nullable Method method, Result result) {
        return new RequalificationEntry(id,
                new Requalification(month, method, false, false, Rin.parse("A123"), false, result), null, null);
    }

    private @Nullable Method method(String specification) {
        if (random.nextInt(12) == 0) {
            return null;
        }
        return Method.valueOf(switch (specification) {
            case "MC-331" -> pick("V", "I", "K", "P");
            case "DOT-51" -> pick("PERIODIC", "INTERMEDIATE", "P");
            case "ASME" -> pick("VALVE_REPLACED", "VALVE_INSPECTED", "PROTECTION_TESTED");
            default -> pick("VOLUMETRIC_EXPANSION", "PROOF_PRESSURE", "EXTERNAL_VISUAL");
        });
    }

    /** A day so many days from today. */
    private LocalDate day(int from, int to) {
        return TestClock.TODAY.plusDays(from + random.nextInt(to - from + 1));
    }

    private String pick(String... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
