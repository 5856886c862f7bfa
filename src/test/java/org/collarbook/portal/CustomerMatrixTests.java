package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.stream.Collectors;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Doors;
import org.collarbook.access.Role;
import org.collarbook.platform.Cursor;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpMethod;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/**
 * Whatever is read (each GET that is served, found in the mappings), with every kind of id of one customer and the key of
 * another's portal: not a byte of the one comes out.
 */
@RegisterTest
class CustomerMatrixTests {

    private static final Set<String> OF_BOTH = Set.of("/api/rules", "/api/rules/coverage", "/api/rules/*",
            "/api/retention");

    /** Lists without an id in the path: the caller's own. */
    private static final Set<String> OF_ITS_OWN = Set.of("/api/portal/containers", "/api/portal/sites");
    private static final Set<String> ONLY_MISPUT = Set.of("WRONG_TYPE", "UNKNOWN_PARAMETER");

    private final Api api;
    private final Given given;
    private final RequestMappingHandlerMapping mappings;

    CustomerMatrixTests(Api api, Given given,
            @Qualifier("requestMappingHandlerMapping") RequestMappingHandlerMapping mappings) {
        this.api = api;
        this.given = given;
        this.mappings = mappings;
    }

    private Set<String> reads() {
        var paths = new TreeSet<String>();
        mappings.getHandlerMethods().keySet().stream()
                .filter(info -> info.getMethodsCondition().getMethods().contains(RequestMethod.GET))
                .forEach(info -> info.getPatternValues().stream().filter(path -> path.startsWith("/api/"))
                        .forEach(paths::add));
        return paths;
    }

    /** Each path with each of their ids; where it has two, with each pair of them. */
    private static List<String> asked(String path, Collection<String> ids) {
        var asked = List.of(path);
        while (asked.getFirst().contains("{")) {
            asked = asked.stream().flatMap(one -> ids.stream()
                    .map(id -> one.replaceFirst("\\{[^}]+}", Matcher.quoteReplacement(id.replace(" ", "%20")))))
                    .toList();
        }
        return asked;
    }

    @Test
    void eachReadIsAskedWithAnIdThatItKnows() {
        var theirs = TheirThings.of(api, given);
        var askers = List.of(api.as(Role.ADMINISTRATOR),
                api.asPortalOf(new CustomerId(UUID.fromString(theirs.get("customer")))));
        var with = "?with=" + theirs.get("plan");
        var ofTheirs = reads().stream().filter(path -> path.contains("{")).collect(Collectors.toSet());
        ofTheirs.removeIf(path -> OF_BOTH.contains(path.replaceAll("\\{[^}]+}", "*")));
        assertThat(ofTheirs).allSatisfy(path -> assertThat(askers.stream().flatMap(asker -> asked(path,
                theirs.values()).stream()
                .map(one -> asker.get(one + (path.endsWith("/comparison") ? with : "")).status())))
                .as("none of their ids is known to " + path).contains(200));
    }

    @Test
    void noReadTellsAnotherCustomersPortalAnything() {
        var theirs = TheirThings.of(api, given);
        var mine = given.customer();
        var portal = api.asPortalOf(new CustomerId(mine));
        var wrong = new ArrayList<String>();
        var reads = reads();
        assertThat(reads).hasSizeGreaterThan(60);
        for (var path : reads) {
            for (var asked : asked(path, theirs.values())) {
                for (var query : List.of("", filter(theirs))) {
                    var answer = portal.get(asked + query);
                    if (!isRefused(answer, path) || tells(answer, theirs)) {
                        wrong.add(asked + query + " answered " + answer);
                    }
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** With everything of theirs in the query besides. */
    private static String filter(Map<String, String> theirs) {
        return "?customer=" + theirs.get("customer") + "&site=" + theirs.get("site") + "&container="
                + theirs.get("container") + "&tag=" + theirs.get("tag") + "&serial=" + theirs.get("serial");
    }

    /** A text where an id belongs is told to be none, whosever it is. */
    private static boolean isRefused(Answer answer, String path) {
        var door = path.replaceAll("\\{[^}]+}", "*");
        return (OF_BOTH.contains(door) || OF_ITS_OWN.contains(door)) && answer.status() == 200
                || List.of(403, 404).contains(answer.status())
                || answer.status() == 400 && ONLY_MISPUT.containsAll(answer.errors().values());
    }

    /** An answer may not even repeat the id that was asked for, but to say that it is misput: as {@code found}. */
    private static boolean tells(Answer answer, Map<String, String> theirs) {
        if (answer.status() == 400) {
            var rest = answer.headers().map() + answer.body().replaceAll("\"found\":\"[^\"]*\"", "");
            return theirs.values().stream().anyMatch(rest::contains);
        }
        var all = answer.headers().map() + answer.body();
        return theirs.values().stream().anyMatch(all::contains);
    }

    @Test
    void whatAPortalMayReadShowsItsOwnAloneWhateverIsAsked() {
        var open = Doors.TABLE.stream().filter(door -> door.method() == HttpMethod.GET
                && door.roles().contains(Role.PORTAL)).map(Doors.Door::path).collect(Collectors.toSet());
        open.removeAll(OF_BOTH);
        var theirs = TheirThings.of(api, given);
        var mine = given.customer();
        var site = given.site(mine);
        var own = given.registered();
        given.moved(own, site, "2026-11-20T09:00:00Z");
        var portal = api.asPortalOf(new CustomerId(mine));
        var subscription = portal.post("/api/customers/" + mine + "/notice-subscriptions",
                Map.of("url", "https://endpoint.example/told", "kinds", List.of("HOLD"))).expect(201)
                .text("/subscription/id");
        // what a portal may read besides the law, and the id that it may ask there; another line needs one
        var asked = Map.of("/api/portal/containers", "", "/api/portal/containers/*", own, "/api/portal/sites", "",
                "/api/portal/sites/*", site, "/api/customers/*/notice-subscriptions", mine,
                "/api/notice-subscriptions/*", subscription, "/api/notice-subscriptions/*/attempts", subscription,
                "/api/notice-subscriptions/*/notices", subscription);
        assertThat(open).isEqualTo(asked.keySet());
        asked.forEach((path, id) -> {
            for (var query : List.of("", "?size=1000", filter(theirs), "?cursor=" + Cursor.after(
                    UUID.fromString(theirs.get("container"))), "?cursor=" + Cursor.after(new UUID(0, 0)))) {
                var answer = portal.get(path.replace("*", id.toString()) + query);
                assertThat(answer.status()).as(path + query).isEqualTo(query.isEmpty() ? 200 : answer.status())
                        .isIn(200, 400, 404);
                assertThat(tells(answer, theirs)).as(path + query).isFalse();
            }
        });
        assertThat(portal.get("/api/portal/containers").text("/items/0/id")).isEqualTo(own.toString());
        assertThat(portal.get("/api/portal/containers").at("/items")).hasSize(1);
        assertThat(portal.get("/api/portal/sites").at("/items")).hasSize(1);
    }

    @Test
    void foreignAndUnknownAreAlikeInStatusBodyAndHeaders() {
        var portal = api.asPortalOf(new CustomerId(given.customer()));
        var theirs = given.customer();
        var site = given.site(theirs);
        var container = given.registered();
        given.moved(container, site, "2026-11-20T09:00:00Z");
        for (var path : Map.of("/api/portal/containers/%s", container, "/api/portal/sites/%s", site,
                "/api/customers/%s/notice-subscriptions", theirs).entrySet()) {
            var foreign = portal.get(path.getKey().formatted(path.getValue()));
            var nobody = portal.get(path.getKey().formatted(UUID.randomUUID()));
            assertThat(foreign.status()).isEqualTo(nobody.status()).isEqualTo(404);
            assertThat(foreign.body()).isEqualTo(nobody.body());
            assertThat(constant(foreign)).isEqualTo(constant(nobody));
        }
    }

    /** Without what differs from one request to the next; the server ends a connection after so many of them. */
    private static Map<String, List<String>> constant(Answer answer) {
        return answer.headers().map().entrySet().stream()
                .filter(header -> !Set.of("date", "x-request-id", "ratelimit", "connection").contains(header.getKey()))
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }
}
