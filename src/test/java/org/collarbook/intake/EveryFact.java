package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.compliance.Requirements;
import org.collarbook.custody.Fill;
import org.collarbook.custody.Fills;
import org.collarbook.holds.HoldReason;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.Started;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Fills a register with containers of every kind and every fact that a ledger can tell, and some that it cannot. */
final class EveryFact {

    static final List<String> ODD = List.of("=1+1", "'=1+1", "''-x", "+5", "-7", "@x", "'quoted", "a\"b\"", "a;b|c,d",
            "\"; |\"",
            "Łódź Ж 漢字 🔥", "none", "#1", "\\N", "\\.", "NULL");
    private static final Map<String, String> KINDS = Map.of("ASME", "STATIONARY_TANK", "MC-331", "CARGO_TANK",
            "DOT-51", "PORTABLE_TANK");
    private static final Caller CALLER = new Caller(UUID.randomUUID(), "seeded", Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Api api;
    private final Given given;
    private final Requalifications requalifications;
    private final Fills fills;
    private final Requirements requirements;
    private final TransactionTemplate transaction;
    private final JdbcClient jdbc;
    private final Random random;

    EveryFact(Started service, long seed) {
        api = service.get(Api.class);
        given = service.get(Given.class);
        requalifications = service.get(Requalifications.class);
        fills = service.get(Fills.class);
        requirements = service.get(Requirements.class);
        transaction = service.get(TransactionTemplate.class);
        jdbc = service.get(JdbcClient.class);
        random = new Random(seed);
    }

    void fill(int fleet) {
        oddTexts();
        owners();
        held();
        tanks();
        parts();
        disputedAndMerged();
        declared();
        var sites = List.of(site("S-US", "US", "America/Chicago"), site("S-BC", "CA-BC", "America/Vancouver"),
                site("S-UK", "UK", "Europe/London"));
        for (int i = 0; i < 10; i++) {
            var body = Given.cylinder();
            body.put("manufactured", "5-2" + i % 6);
            given.moved(given.registered(body), sites.getFirst(), "2026-11-20T09:00:00Z");
        }
        for (int i = 0; i < fleet; i++) {
            container(sites.get(random.nextInt(sites.size())));
        }
    }

    private UUID post(String path, Map<String, @Nullable Object> body) {
        return UUID.fromString(api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString())
                .post(path, body).expect(201).id());
    }

    private UUID site(String code, String jurisdiction, String zone) {
        var body = Given.depot();
        body.put("code", code);
        body.put("jurisdiction", jurisdiction);
        body.put("zone", zone);
        return post("/api/sites", body);
    }

    private void oddTexts() {
        for (var text : ODD) {
            var customer = post("/api/customers", Map.of("code", "K" + text, "name", text));
            var site = new LinkedHashMap<String, @Nullable Object>(Given.depot());
            site.putAll(Map.of("code", text, "name", text, "address", text, "kind", "CUSTOMER", "customerId", customer,
                    "latitude", 41.10420000000001, "longitude", -0.00001));
            var body = Given.cylinder();
            body.put("serial", text + Given.serial());
            body.put("tag", text + body.get("serial"));
            body.put("owned", false);
            body.put("owner", text);
            body.put("permit", Map.of("number", text));
            var id = given.registered(body);
            given.moved(id, post("/api/sites", site), "2026-11-20T09:00:00Z");
            hold(id, "DENTED", text);
        }
    }

    private void hold(UUID id, String reason, String note) {
        api.as(Role.YARD).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/containers/" + id + "/holds",
                Map.of("reason", reason, "note", note, "occurredAt", "2026-03-02T03:00:00Z")).expect(201);
    }

    private void owners() {
        var truths = new ArrayList<@Nullable Boolean>(List.of(true, false));
        truths.add(null);
        for (var owned : truths) {
            for (var consent : truths) {
                for (var owner : new String[]{"", "Orchard", "distributor"}) {
                    var body = Given.cylinder();
                    body.put("owned", owned);
                    body.put("owner", owner);
                    body.put("ownerConsent", consent);
                    given.registered(body);
                }
            }
        }
    }

    private void held() {
        for (var reason : HoldReason.values()) {
            var id = given.registered();
            hold(id, reason.name(), "seen at the dock");
            hold(id, reason.name(), "seen again");
        }
        var inFire = Given.cylinder();
        inFire.put("specification", "DOT-4E240");
        hold(given.registered(inFire), "FIRE_OR_OVERHEATED", "a barn");
        var recalled = Given.cylinder();
        recalled.put("maker", "RCL");
        given.registered(recalled);
        api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/recalls",
                Map.of("title", "valves", "description", "valves", "maker", "RCL", "reference", "R-1"));
    }

    private UUID tank(String specification) {
        var body = Given.cylinder();
        body.put("specification", specification);
        body.put("kind", KINDS.get(specification));
        body.put("waterCapacity", "499 gal");
        body.put("servicePressure", "250");
        body.put("tare", null);
        body.put("reliefValve", "EXTERNAL");
        body.put("steel", "QT");
        body.put("lined", true);
        return given.registered(body);
    }

    private void out(UUID id, String since, @Nullable String returned) {
        var yard = api.as(Role.YARD);
        yard.post("/api/containers/" + id + "/out-of-service", Map.of("since", since, "reason", "sold; moved"))
                .expect(201);
        if (returned != null) {
            yard.post("/api/containers/" + id + "/out-of-service/return", Map.of("returnedOn", returned, "note",
                    "looked at")).expect(201);
        }
    }

    private void tanks() {
        for (var specification : KINDS.keySet()) {
            out(tank(specification), "2026-01-05", null);
            var twice = tank(specification);
            out(twice, "2019-01-05", "2021-02-01");
            out(twice, "2023-01-05", "2023-02-01");
        }
    }

    private UUID part(UUID id, Map<String, Object> part) {
        var answer = api.as(Role.YARD).post("/api/containers/" + id + "/parts", part).expect(201);
        return UUID.fromString(answer.id());
    }

    private void parts() {
        for (var specification : List.of("ASME", "MC-331")) {
            for (var forGood : new boolean[]{true, false}) {
                var id = tank(specification);
                part(id, Map.of("kind", "GAUGE", "fittedOn", "2020-01-05", "serial", "=1|2", "model", "m;1"));
                var valve = part(id, Map.of("kind", "RELIEF_VALVE", "fittedOn", "2016-01-05", "manufactured",
                        "2015-03", "maker", "\"KVR\""));
                api.as(Role.YARD).post("/api/containers/" + id + "/parts/" + valve + "/removal", Map.of("removedOn",
                        "2026-05-01", "reason", "worn | leaking", "forGood", forGood)).expect(201);
            }
        }
        var labelled = given.registered();
        part(labelled, Map.of("kind", "EXEMPTION_LABEL", "fittedOn", "2020-01-05", "labelledFor",
                "INDUSTRIAL_TRUCK"));
        part(given.registered(), Map.of("kind", "OVERFILL_PREVENTION_DEVICE", "fittedOn", "2020-01-05"));
    }

    private void disputedAndMerged() {
        var here = site("S-HERE", "US", "America/Chicago");
        var there = site("S-THERE", "CA", "America/Toronto");
        var near = site("S-NEAR", "US", "America/Denver");
        for (var other : List.of(there, near)) {
            var id = given.registered();
            given.moved(id, here, "2026-11-20T09:00:00Z");
            given.seen(id, other, "2026-11-21T09:00:00Z");
        }
        var one = api.as(Role.CLERK).post("/api/containers", Given.cylinder()).expect(201);
        var two = given.registered();
        hold(two, "LEAKING", "the record that goes");
        requalifications.append(entry(two, YearMonth.of(2020, 5), Method.EXTERNAL_VISUAL, Result.PASSED, "5-20E",
                null, Rin.parse("A123")), CALLER);
        requalifications.append(entry(UUID.fromString(one.id()), YearMonth.of(2020, 5), Method.EXTERNAL_VISUAL,
                Result.PASSED, "5 20 E", null, Rin.parse("A123")), CALLER);
        api.as(Role.CLERK).ifMatch(api.as(Role.CLERK).get("/api/containers/" + one.id())).post("/api/containers/"
                + one.id() + "/merges", Map.of("absorbed", two, "setAside", List.of("serial"), "reason", "one collar"))
                .expect(201);
    }

    private void declared() {
        for (int i = 0; i < 6; i++) {
            var body = Given.cylinder();
            body.put("maker", "DCL" + i);
            List.of("coated", "service", "owned", "marksLegible").forEach(body::remove);
            var id = given.registered(body);
            if (i % 2 == 0) {
                given.moved(id, site("S-DCL" + i, "US", "America/Chicago"), "2026-11-20T09:00:00Z");
            }
            declare("DCL" + i, "the plant manager; of the north", Map.of("coated", true, "jurisdiction", "US"));
            declare("DCL" + i, "the \"yard\" foreman", Map.of("marksLegible", true, "owned", i % 3 > 0,
                    "ownerConsent", true, "service", Map.of("lading", "LPG", "exclusive", true)));
        }
    }

    private void declare(String maker, String by, Map<String, Object> facts) {
        api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/declarations",
                Map.of("declaredBy", by, "declaredOn", "2026-11-20", "statement", "Seen; as =1 | 2.", "facts", facts,
                        "group", Map.of("maker", maker)));
    }

    private void container(UUID site) {
        var body = Given.cylinder();
        var specification = pick("DOT-4BA240", "dot 4bw240", "DOT-4E240", "DOT-4B240ET", "DOT-3B300", "TC-4BAM17",
                "DOT-3HT1850", "DOT-SP12345", "DOT-39", "MC-331", "DOT-51", "ASME", "UN", "EN 1442", "ICC-4BA240");
        var made = YearMonth.of(1998, 1).plusMonths(random.nextInt(12 * 27));
        body.put("specification", specification);
        body.put("kind", KINDS.getOrDefault(specification, "CYLINDER"));
        body.put("manufactured", random.nextInt(8) == 0
                ? null
                : random.nextBoolean() || specification.startsWith("U") || specification.startsWith("EN")
                        ? made.toString()
                        : made.getMonthValue() + " AB " + made.getYear());
        body.put("waterCapacity", pick("47.60 lb", "108 L", "21.6 kg", "499 gal"));
        body.put("tare", pick("TW 17.0", "7.7 kg", "17 lb"));
        body.put("schemeDue", random.nextInt(4) > 0 ? null : "2028-0" + (1 + random.nextInt(9)));
        body.put("outOfServiceSince", random.nextInt(6) > 0 ? null : day(500).toString());
        body.put("extendedPeriod", pick(null, "P15Y", "NONE", "COP31"));
        body.put("use", pick(null, "INDUSTRIAL_TRUCK", "FUEL"));
        body.put("installation", specification.equals("ASME") ? "UNDERGROUND" : null);
        body.put("collarRead", pick(null, "yes") != null);
        if (random.nextInt(5) > 0) {
            body.put("permit", Map.of("number", "SP12345", "expires", day(200).plusYears(3).toString(), "intervalYears",
                    5));
        }
        var id = given.registered(body);
        if (random.nextInt(6) > 0) {
            given.moved(id, site, "2026-11-20T09:00:00Z");
        }
        history(id, KINDS.containsKey(specification), made);
        if (random.nextInt(3) > 0) {
            fills.record(new Fill(id, later(made, day(2000)), null), CALLER);
            jdbc.sql("insert into emptying (id, container_id, emptied_at, emptied_on, recorded_by)"
                    + " values (?, ?, ?, ?, ?)").params(UUID.randomUUID(), id,
                            TestClock.TODAY.minusDays(9).atTime(18, 0).atOffset(ZoneOffset.UTC),
                            TestClock.TODAY.minusDays(random.nextInt(2) * 9L + 9), CALLER.id())
                    .update();
        }
        transaction.executeWithoutResult(status -> requirements.reassess(List.of(id)));
    }

    private void history(UUID id, boolean tank, YearMonth made) {
        var entries = new ArrayList<RequalificationEntry>();
        for (int tests = random.nextInt(4); tests > 0; tests--) {
            var done = YearMonth.from(later(made, day(3000)));
            var method = random.nextInt(8) == 0
                    ? null
                    : tank
                            ? Method.values()[Method.V.ordinal() + random.nextInt(12)]
                            : Method.values()[random.nextInt(Method.V.ordinal())];
            var result = random.nextInt(6) > 0 ? Result.PASSED : Result.values()[random.nextInt(3)];
            var day = random.nextInt(3) > 0 || done.atDay(20).isAfter(TestClock.TODAY) ? null : done.atDay(20);
            var stamp = random.nextBoolean() ? null : done.getMonthValue() + "-" + done.getYear() % 100 + pick("E", "");
            entries.add(entry(id, done, method, result, stamp, day, random.nextBoolean() ? null : Rin.parse("A123")));
            if (result == Result.REJECTED && day != null) {
                entries.add(entry(id, done, method, Result.PASSED, null, day.plusDays(1), Rin.parse("A123")));
            }
        }
        transaction.executeWithoutResult(status -> requalifications.insert(entries, CALLER.id()));
    }

    private RequalificationEntry entry(UUID id, YearMonth month, @Nullable Method method, Result result,
            @Nullable String stamp, @Nullable LocalDate day, @Nullable Rin rin) {
        boolean seen = rin == null && random.nextInt(3) == 0;
        return new RequalificationEntry(id, new Requalification(month, method, random.nextInt(9) == 0,
                random.nextInt(9) == 0, rin, seen, result), stamp, null, day);
    }

    private static LocalDate later(YearMonth made, LocalDate day) {
        return day.isBefore(made.atDay(1)) ? made.atEndOfMonth() : day;
    }

    private LocalDate day(int before) {
        return TestClock.TODAY.minusDays(random.nextInt(before));
    }

    private @Nullable String pick(@Nullable String... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
