package org.collarbook.schedule.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.util.EnumSet;
import java.util.List;
import java.util.Collections;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.ProblemException;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.RuleBook;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.PlatformTransactionManager;

/** The months are those that {@link FutureTest} derives from the texts; today is 25 November 2026. */
@RegisterTest
class ForecastTests {

    private final Api api;
    private final Given given;
    private final Tables tables;

    ForecastTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.given = given;
        this.tables = tables;
    }

    private UUID at(UUID site, String manufactured, Map<String, @Nullable Object> otherwise) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        body.putAll(otherwise);
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private Answer asked(String body) {
        return api.as(Role.CLERK).post("/api/forecasts", body).expect(200);
    }

    /** Each reads a fleet whole, so they are made one after the other; who cannot wait so long is told when to come. */
    @Test
    void severalAtOnceAreMadeOneAfterTheOtherOrToldToComeAgain() {
        at(given.site(null), "2020-05", Map.of());
        try (var callers = Executors.newFixedThreadPool(6)) {
            Callable<Answer> question = () -> api.as(Role.CLERK).post("/api/forecasts",
                    "{\"years\":1,\"filter\":{\"kind\":\"CYLINDER\"}}");
            var answers = callers.invokeAll(Collections.nCopies(6, question));
            for (var answer : answers) {
                if (answer.get().status() != 200) {
                    assertThat(answer.get().expectProblem(503, "BUSY").header("Retry-After")).isNotEmpty();
                }
            }
            assertThat(answers).anySatisfy(answer -> assertThat(answer.get().status()).isEqualTo(200));
        } catch (InterruptedException | ExecutionException failed) {
            throw new AssertionError(failed);
        }
    }

    /** The months of a curve in which something is due, with how many. */
    private static Map<String, Integer> months(Answer answer, int curve) {
        var months = new TreeMap<String, Integer>();
        answer.at("/curves/" + curve + "/months").forEach(month -> {
            if (month.at("/due").asInt() > 0) {
                months.put(month.at("/month").asString(), month.at("/due").asInt());
            }
        });
        return months;
    }

    @Test
    void comparesMethodsByMonthAndYear() {
        var site = given.site(given.customer());
        at(site, "2018-03", Map.of());
        at(site, "2018-03", Map.of("waterCapacity", "238 lb"));
        at(site, "2014-10", Map.of());
        var answer = asked("""
                {"years": 10, "methods": ["EXTERNAL_VISUAL", "VOLUMETRIC_EXPANSION"], "filter": {"site": "%s"}}"""
                .formatted(site));
        assertThat(answer.text("/from")).isEqualTo("2026-11");
        assertThat(answer.text("/through")).isEqualTo("2036-10");
        assertThat(answer.at("/containers").asInt()).isEqualTo(3);
        assertThat(answer.text("/ruleBook")).startsWith("sha256:");
        // 180.209(e) gives 2018-03 + 12 and 2014-10 + 12, which is past; (g) then five years
        assertThat(months(answer, 0)).isEqualTo(Map.of("2026-11", 1, "2030-03", 2, "2031-11", 1, "2035-03", 2));
        assertThat(months(answer, 1)).isEqualTo(Map.of("2026-11", 1, "2030-03", 2));
        assertThat(answer.at("/curves/0/months")).hasSize(120);
        assertThat(answer.at("/curves/0/overdueNow").asInt()).isEqualTo(1);
        assertThat(answer.at("/curves/0/due").asInt()).isEqualTo(6);
        assertThat(answer.at("/curves/0/years")).hasSize(11);
        assertThat(answer.text("/curves/0/years/4/year")).isEqualTo("2030");
        assertThat(answer.at("/curves/0/years/4/due").asInt()).isEqualTo(2);
        assertThat(answer.at("/curves/0/months/40/work").toString()).isEqualTo(
                "[{\"requirement\":\"SHELL\",\"method\":\"EXTERNAL_VISUAL\",\"count\":2}]");
        assertThat(answer.at("/curves/0").has("cost")).as("no costs were told").isFalse();
    }

    /** 12.35 + 2 x 0.1 by hand; binary fractions would not add up to 12.55. What has no price is counted, not free. */
    @Test
    void costsAreExactAndWhatHasNoPriceIsSaid() {
        var site = given.site(given.customer());
        at(site, "2018-03", Map.of());
        at(site, "2018-03", Map.of());
        at(site, "2018-03", Map.of("waterCapacity", "238 lb"));
        at(site, "2018-03", Map.of("coated", false));
        var answer = asked("""
                {"years": 5, "methods": ["EXTERNAL_VISUAL", "PROOF_PRESSURE"], "filter": {"site": "%s"}, "costs": [
                  {"method": "EXTERNAL_VISUAL", "each": 0.1, "currency": "USD"},
                  {"method": "EXTERNAL_VISUAL", "size": "100 lb", "each": 12.35, "currency": "USD"}]}"""
                .formatted(site));
        assertThat(answer.text("/currency")).isEqualTo("USD");
        // the bare one is overdue, 2018-03 + 5, and again in 2031-11, which is after the five years
        assertThat(answer.at("/curves/0/months/0/cost").asString()).isEqualTo("0.1");
        assertThat(answer.at("/curves/0/months/40/cost").asString()).isEqualTo("12.55");
        assertThat(answer.at("/curves/0/months/1/cost").asString()).isEqualTo("0");
        assertThat(answer.at("/curves/0/years/4/cost").asString()).isEqualTo("12.55");
        assertThat(answer.at("/curves/0/cost").asString()).isEqualTo("12.65");
        assertThat(answer.at("/curves/0/unpriced").asInt()).isZero();
        // three by proof test; the bare one may not, and is done by the expansion test; nothing has a price
        assertThat(answer.at("/curves/1/cost").asString()).isEqualTo("0");
        assertThat(answer.at("/curves/1/unpriced").asInt()).isEqualTo(4);
        assertThat(answer.at("/curves/1/methodNotAccepted").asInt()).isEqualTo(1);
    }

    @Test
    void saysWhatIsNotForecastAndWhoLeaves() {
        var site = given.site(given.customer());
        at(site, "2012-03", Map.of("specification", "DOT-4L240"));
        at(site, "2003-01", Map.of("specification", "DOT-3HT1850"));
        at(site, "2001-01", Map.of("specification", "DOT-3HT1850"));
        var unknown = Given.cylinder();
        unknown.remove("coated");
        given.moved(given.registered(unknown), site, "2026-11-20T09:00:00Z");
        var held = at(site, "2018-03", Map.of());
        api.as(Role.YARD).post("/api/containers/" + held + "/holds", Map.of("reason", "DENTED")).expect(201);
        var answer = asked("{\"years\": 5, \"filter\": {\"site\": \"" + site + "\"}}");
        // 180.209(k): 2003-01 + 24 years is its last month; overdue until then, so done now
        assertThat(months(answer, 0)).isEqualTo(Map.of("2026-11", 1));
        assertThat(answer.at("/curves/0/leaving").asInt()).isEqualTo(1);
        assertThat(answer.at("/curves/0/years/1/leaving").asInt()).as("2027").isEqualTo(1);
        assertThat(answer.at("/curves/0/noLastMethod").asInt()).isEqualTo(1);
        var told = new TreeMap<String, Integer>();
        answer.at("/curves/0/notForecast").forEach(one -> told.put(
                one.path("requirement").asString("-") + " " + one.at("/reason").asString(), one.at("/now").asInt()));
        assertThat(told).isEqualTo(Map.of("- CONDEMNED", 1, "- HELD", 1, "SHELL NOT_REQUIRED", 1, "SHELL UNDETERMINED",
                1));
    }

    @Test
    void isOfWhatIsAskedFor() {
        var customer = given.customer();
        var site = given.site(customer);
        var depot = given.site(null);
        at(site, "2018-03", Map.of());
        at(given.site(customer), "2018-04", Map.of());
        at(depot, "2018-05", Map.of());
        given.moved(given.registered(tank()), depot, "2026-11-20T09:00:00Z");
        assertThat(months(asked(filtered("customer", customer)), 0)).containsOnlyKeys("2030-03", "2030-04");
        var ofDepot = "{\"years\": 5, \"filter\": {\"depot\": \"" + depot + "\", ";
        assertThat(months(asked(ofDepot + "\"kind\": \"CYLINDER\"}}"), 0)).containsOnlyKeys("2030-05");
        assertThat(months(asked(ofDepot + "\"requirement\": \"SHELL\"}}"), 0)).containsOnlyKeys("2030-05");
        var tanks = asked(ofDepot + "\"kind\": \"CARGO_TANK\"}}");
        assertThat(tanks.at("/containers").asInt()).isEqualTo(1);
        assertThat(tanks.at("/curves/0/months/0/work").toString()).contains("LEAKAGE");
        // the stops of its routes are the depot's too
        api.as(Role.DISPATCHER).post("/api/routes", Map.of("code", "R" + Given.serial(), "name", "A loop", "depot",
                depot, "visits", Map.of("rule", "FREQ=WEEKLY;BYDAY=MO", "from", "2026-11-30", "onHolidays", true),
                "stops",
                List.of(site))).expect(201);
        assertThat(months(asked(filtered("depot", depot).replace("}}", ", \"kind\": \"CYLINDER\"}}")), 0))
                .containsOnlyKeys("2030-03", "2030-05");
    }

    private static Map<String, @Nullable Object> tank() {
        var body = Given.cylinder();
        body.put("kind", "CARGO_TANK");
        body.put("specification", "MC-331");
        body.put("manufactured", "2015-06");
        body.put("waterCapacity", "3000 gal");
        return body;
    }

    private static String filtered(String by, UUID id) {
        return "{\"years\": 5, \"filter\": {\"" + by + "\": \"" + id + "\"}}";
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            {"years": 0}                                                             | /years              | OUT_OF_RANGE
            {"years": 31}                                                            | /years              | OUT_OF_RANGE
            {"years": 2.5}                                                           | /years              | OUT_OF_RANGE
            {"methods": []}                                                          | /methods            | MISSING
            {"methods": [null]}                                                      | /methods/0          | MISSING
            {"methods": ["BY_EAR"]}                                                  | /methods/0          | UNKNOWN_WORD
            {"methods": ["AS_LAST", "as_last"]}                                      | /methods/1          | TOLD_TWICE
            {"month": 3}                                                             | /month              | UNKNOWN_FIELD
            {"filter": {"site": "00000000-0000-0000-0000-000000000001"}}             | /filter/site        | UNKNOWN_SITE
            {"filter": {"customer": "00000000-0000-0000-0000-000000000001"}}         | /filter/customer    | UNKNOWN_CUSTOMER
            {"filter": {"depot": "00000000-0000-0000-0000-000000000001"}}            | /filter/depot       | UNKNOWN_DEPOT
            {"filter": {"kind": "BARREL"}}                                           | /filter/kind        | UNKNOWN_WORD
            {"filter": {"kind": "EXTINGUISHER"}}                                     | /filter/kind        | NOT_FOR_THIS_KIND
            {"filter": {"requirement": "EXTINGUISHER_EMPTYING"}}                     | /filter/requirement | NOT_FOR_THIS_KIND
            {"filter": {"requirement": "PAINT"}}                                     | /filter/requirement | UNKNOWN_WORD
            {"costs": [{"each": 1, "currency": "USD"}]}                              | /costs/0/method     | MISSING
            {"costs": [{"method": "V", "currency": "USD"}]}                          | /costs/0/each       | MISSING
            {"costs": [{"method": "V", "each": -1, "currency": "USD"}]}              | /costs/0/each       | OUT_OF_RANGE
            {"costs": [{"method": "V", "each": 0.00001, "currency": "USD"}]}         | /costs/0/each       | OUT_OF_RANGE
            {"costs": [{"method": "V", "each": 1}]}                                  | /costs/0/currency   | MISSING
            {"costs": [{"method": "V", "each": 1, "currency": "XQX"}]}               | /costs/0/currency   | UNKNOWN_CURRENCY
            {"costs": [{"method": "V", "each": 1, "currency": "USD"}, {"method": "K", "each": 1, "currency": "CAD"}]} | /costs/1/currency | ANOTHER_CURRENCY
            {"costs": [{"method": "V", "each": 1, "currency": "USD"}, {"method": "V", "each": 2, "currency": "USD"}]} | /costs/1          | TOLD_TWICE
            {"costs": [{"method": "V", "size": "big", "each": 1, "currency": "USD"}]} | /costs/0/size      | UNKNOWN_SIZE
            {"costs": [null]}                                                        | /costs/0            | MISSING
            """)
    void tellsWhatCannotBeTaken(String body, String pointer, String code) {
        var refused = api.as(Role.CLERK).post("/api/forecasts", body).expectProblem(400, "INVALID_INPUT");
        assertThat(refused.errors()).containsEntry(pointer, code);
    }

    @Test
    void moreThanTheCallerCanWaitForIsRefused(@Autowired FleetRows fleet,
            @Autowired KnownContainers containers,
            @Autowired Requirements requirements,
            @Autowired RuleBook rules,
            @Autowired Clock clock,
            @Autowired PlatformTransactionManager transactions) {
        var site = given.site(given.customer());
        at(site, "2018-03", Map.of());
        at(site, "2018-03", Map.of());
        var question = new Question(5, List.of(Choice.AS_LAST),
                new Question.Fleet(site, null, null, ContainerKind.CYLINDER), null, Prices.NONE);
        assertThat(new Forecasts(2, fleet, containers, requirements, rules, clock, transactions).answer(question)
                .containers()).isEqualTo(2);
        assertThatThrownBy(() -> new Forecasts(1, fleet, containers, requirements, rules, clock, transactions)
                .answer(question)).isInstanceOfSatisfying(ProblemException.class,
                        refused -> assertThat(refused.problem().code()).isEqualTo("FLEET_TOO_LARGE"));
    }

    @Test
    void storesNothing() {
        var site = given.site(given.customer());
        at(site, "2014-10", Map.of());
        tables.unchangedBy(() -> asked(filtered("site", site)));
    }

    @ParameterizedTest
    @EnumSource(Role.class)
    void isForTheOfficeAndTheDispatchers(Role role) {
        if (role == Role.PORTAL) {
            return;
        }
        boolean open = EnumSet.of(Role.CLERK, Role.DISPATCHER, Role.ADMINISTRATOR).contains(role);
        var body = filtered("site", given.site(null));
        assertThat(api.as(role).post("/api/forecasts", body).status()).isEqualTo(open ? 200 : 403);
    }
}
