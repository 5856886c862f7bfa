package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.platform.Ids;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

@RegisterTest
class ScheduleFilterTests {

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;

    ScheduleFilterTests(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
    }

    private String at(UUID site, String serial, Map<String, @Nullable Object> unlike) {
        var body = Given.cylinder();
        body.put("serial", serial + Given.serial());
        body.putAll(unlike);
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        return String.valueOf(body.get("serial"));
    }

    private Answer schedule(String query) {
        return api.as(Role.CLERK).get("/api/schedule?" + query).expect(200);
    }

    private List<String> serials(String query) {
        return schedule(query).at("/items").valueStream().map(line -> line.at("/serial").asString()).toList();
    }

    private String codeOf(String table, UUID id) {
        return jdbc.sql("select code from " + table + " where id = ?").param(id).query(String.class).single();
    }

    private String route(UUID... stops) {
        var code = "R" + Given.serial();
        var id = Ids.next();
        jdbc.sql("insert into route (id, code, name, depot_id, rule, first_day, on_holidays) values"
                + " (?, ?, 'A route', ?, 'FREQ=WEEKLY;BYDAY=TH', date '2026-01-01', true)")
                .params(id, code, given.site(null)).update();
        jdbc.sql("insert into route_stop (route_id, position, site_id)"
                + " select :id, stop.n, stop.id from unnest(:stops) with ordinality stop (id, n)").param("id", id)
                .param("stops", stops).update();
        return code;
    }

    @Test
    void filtersByWhatTheContainerIsAndWhoseItIs() {
        var site = given.site(given.customer());
        var small = at(site, "A", Map.of());
        var large = at(site, "B", Map.of("waterCapacity", "239 lb"));
        var theirs = at(site, "C", Map.of("owned", false, "owner", "Ann's (a $1 co.) \\ ;", "ownerConsent", true));
        var other = at(site, "D", Map.of("specification", "DOT-4BW240"));
        assertThat(serials("site=" + site + "&containerSize=100lb")).containsExactly(large);
        assertThat(serials("site=" + site + "&specification=dot%204bw240")).containsExactly(other);
        assertThat(serials("site=" + site + "&owner=ANN%27S%20(A%20%241%20CO.)%20%5C%20%3B")).containsExactly(theirs);
        assertThat(serials("site=" + site + "&owner=OWN")).containsExactlyInAnyOrder(small, large, other);
        assertThat(schedule("site=" + site + "&owner=OWN").text("/items/0/owner")).isEqualTo("OWN");
        // COPY takes no parameters: what was typed arrives as it was
        var file = api.as(Role.CLERK)
                .get("/api/schedule?format=csv&site=" + site + "&owner=ann%27s%20(a%20%241%20co.)%20%5C%20%3B")
                .expect(200);
        assertThat(file.body().lines()).hasSize(2).last().asString().contains(theirs, "Ann's (a $1 co.) \\ ;");
        assertThat(api.as(Role.CLERK).get("/api/schedule?format=csv&owner=x'%20or%20true%20--").expect(200).body()
                .lines()).hasSize(1);
    }

    @Test
    void filtersByPlacesNamedByIdOrCode() {
        var customer = given.customer();
        var first = given.site(customer);
        var second = given.site(customer);
        var elsewhere = given.site(given.customer());
        var one = at(first, "A", Map.of());
        var two = at(second, "B", Map.of("manufactured", "2015-03"));
        at(elsewhere, "C", Map.of());
        assertThat(serials("site=" + codeOf("site", first))).containsExactly(one);
        assertThat(serials("customer=" + codeOf("customer", customer))).containsExactly(one, two);
        assertThat(serials("customer=" + customer + "&from=2026-01")).containsExactly(two);
        var route = route(second, elsewhere);
        assertThat(serials("customer=" + customer + "&route=" + route)).containsExactly(two);
        var also = route(second);
        var line = schedule("site=" + second).at("/items/0");
        assertThat(line.at("/routes").valueStream().map(code -> code.asString())).containsExactlyInAnyOrder(route,
                also);
        assertThat(api.as(Role.CLERK).get("/api/schedule?format=csv&site=" + second).expect(200).body())
                .containsAnyOf("\"" + route + ", " + also + "\"", "\"" + also + ", " + route + "\"");
    }

    @Test
    void tellsEverythingThatIsWrongAtOnce() {
        var refused = api.as(Role.CLERK)
                .get("/api/schedule?from=2026-13&to=soon&site=nowhere&customer=nobody&route=none"
                        + "&kind=BOTTLE&containerSize=big&specification=%3F&requirement=NONE&status=FINE&size=many&cursor=x"
                        + "&stat=OVERDUE&owner=%01")
                .expectProblem(400, "INVALID_INPUT");
        assertThat(refused.errors())
                .containsExactlyInAnyOrderEntriesOf(Map.ofEntries(Map.entry("from", "INVALID_MONTH"),
                        Map.entry("to", "INVALID_MONTH"), Map.entry("site", "UNKNOWN_SITE"),
                        Map.entry("customer", "UNKNOWN_CUSTOMER"), Map.entry("route", "UNKNOWN_ROUTE"),
                        Map.entry("kind", "UNKNOWN_WORD"), Map.entry("containerSize", "UNKNOWN_SIZE"),
                        Map.entry("specification", "UNKNOWN_SPECIFICATION"), Map.entry("requirement", "UNKNOWN_WORD"),
                        Map.entry("status", "UNKNOWN_WORD"), Map.entry("size", "WRONG_TYPE"),
                        Map.entry("cursor", "INVALID_CURSOR"), Map.entry("stat", "UNKNOWN_PARAMETER"),
                        Map.entry("owner", "INVALID_TEXT")));
        assertThat(refused.body())
                .contains("one of from, to, site, customer, route, kind, containerSize, specification,"
                        + " requirement, status, owner, asOf, knownAt, cursor, size, format");
    }

    /** A code may look like the id of another site; lists and schedules then take the id, in any case. */
    @Test
    void anIdIsOneSitesAlone() {
        var site = given.site(given.customer());
        at(site, "A", Map.of());
        var called = Given.depot();
        called.put("code", site.toString());
        api.as(Role.CLERK).post("/api/sites", called).expect(201);
        for (var name : new String[]{site.toString(), site.toString().toUpperCase(Locale.ROOT)}) {
            assertThat(api.as(Role.CLERK).get("/api/schedule?site=" + name).expect(200).at("/items")).as(name)
                    .hasSize(1);
            assertThat(api.as(Role.CLERK).get("/api/pull-list?site=" + name).expect(200).text("/asked/title"))
                    .as(name).doesNotContain(site.toString());
        }
    }

    @ParameterizedTest
    @CsvSource({"/api/schedule?from=2026-03&to=2026-02, to, OUT_OF_RANGE",
            "/api/schedule?format=csv&size=5, size, UNKNOWN_PARAMETER",
            "/api/schedule/undetermined?from=2026-03, from, UNKNOWN_PARAMETER",
            "/api/schedule/undetermined?cursor=x, cursor, INVALID_CURSOR",
            "/api/schedule/undetermined?kind=BOTTLE, kind, UNKNOWN_WORD"})
    void refuses(String path, String pointer, String code) {
        assertThat(api.as(Role.CLERK).get(path).expectProblem(400, "INVALID_INPUT").errors())
                .containsExactly(Map.entry(pointer, code));
    }

    @Test
    void whatHasNoMonthIsListedWithWhatIsMissing() {
        var site = given.site(given.customer());
        at(site, "A", Map.of());
        var unknown = Given.cylinder();
        unknown.remove("manufactured");
        unknown.remove("collarRead");
        var held = Given.cylinder();
        held.remove("manufactured");
        for (var body : List.of(unknown, held)) {
            given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        }
        var heldId = jdbc.sql("select id from container where serial = ?").param(held.get("serial")).query(UUID.class)
                .single();
        api.as(Role.FILLER).post("/api/containers/" + heldId + "/holds", Map.of("reason", "DENTED")).expect(201);
        var missing = jdbc.sql("select distinct container_id from requirement where site_id = ? and due is null")
                .param(site).query(UUID.class).list();
        var found = new ArrayList<UUID>();
        var next = "";
        do {
            var page = api.as(Role.CLERK)
                    .get("/api/schedule/undetermined?size=1&site=" + site + "&cursor=" + next).expect(200);
            page.at("/items").forEach(line -> {
                found.add(UUID.fromString(line.at("/containerId").asString()));
                assertThat(line.at("/missing").toString()).contains(" is not known.");
            });
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        assertThat(found).doesNotHaveDuplicates().hasSize(2).containsExactlyInAnyOrderElementsOf(missing)
                .contains(heldId);
    }
}
