package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
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

    private final Api api;
    private final Given given;
    private final RequestMappingHandlerMapping mappings;

    CustomerMatrixTests(Api api, Given given,
            @Qualifier("requestMappingHandlerMapping") RequestMappingHandlerMapping mappings) {
        this.api = api;
        this.given = given;
        this.mappings = mappings;
    }

    /** Everything by which the other customer's things are known, by what it is. */
    private Map<String, String> theirs() {
        var known = new LinkedHashMap<String, String>();
        var customer = given.customer();
        var clerk = api.as(Role.CLERK);
        var read = clerk.get("/api/customers/" + customer).expect(200);
        known.put("customer", customer.toString());
        known.put("customer code", read.text("/code"));
        known.put("customer name", read.text("/name"));
        var site = given.site(customer);
        known.put("site", site.toString());
        known.put("site code", clerk.get("/api/sites/" + site).expect(200).text("/code"));
        var cylinder = Given.cylinder();
        var tag = "TAG-" + Given.serial();
        cylinder.put("tag", tag);
        var container = given.registered(cylinder);
        given.moved(container, site, "2026-11-20T09:00:00Z");
        known.put("container", container.toString());
        known.put("serial", String.valueOf(cylinder.get("serial")));
        known.put("tag", tag);
        known.put("hold", api.as(Role.YARD).post("/api/containers/" + container + "/holds", Map.of("reason", "DENTED"))
                .expect(201).text("/hold/id"));
        known.put("part", api.as(Role.YARD).post("/api/containers/" + container + "/parts", Map.of("kind",
                "RELIEF_VALVE", "manufactured", "2026-05", "fittedOn", "2026-11-01")).expect(201).id());
        return known;
    }

    private Set<String> reads() {
        var paths = new TreeSet<String>();
        mappings.getHandlerMethods().keySet().stream()
                .filter(info -> info.getMethodsCondition().getMethods().contains(RequestMethod.GET))
                .forEach(info -> info.getPatternValues().stream().filter(path -> path.startsWith("/api/"))
                        .forEach(paths::add));
        return paths;
    }

    @Test
    void noReadTellsAnotherCustomersPortalAnything() {
        var theirs = theirs();
        var mine = given.customer();
        var portal = api.asPortalOf(new CustomerId(mine));
        var wrong = new ArrayList<String>();
        var reads = reads();
        assertThat(reads).hasSizeGreaterThan(60);
        for (var path : reads) {
            for (var id : path.contains("{") ? theirs.values() : List.of("")) {
                var asked = path.replaceAll("\\{[^}]+}", id);
                var answer = portal.get(asked.replace(" ", "%20") + filter(path, theirs));
                if (!isRefused(answer, path) || tells(answer, theirs, id)) {
                    wrong.add(asked + " answered " + answer);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** With everything of theirs in the query besides; a portal's own lists refuse words that they do not know. */
    private static String filter(String path, Map<String, String> theirs) {
        return path.startsWith("/api/portal/")
                ? "?customer=" + theirs.get("customer")
                : "?customer=" + theirs.get("customer") + "&site=" + theirs.get("site") + "&container="
                        + theirs.get("container") + "&tag=" + theirs.get("tag") + "&serial=" + theirs.get("serial");
    }

    /** A text where an id belongs is told to be none, whosever it is. */
    private static boolean isRefused(Answer answer, String path) {
        var door = path.replaceAll("\\{[^}]+}", "*");
        return OF_BOTH.contains(door) && answer.status() == 200 || List.of(403, 404).contains(answer.status())
                || answer.status() == 400 && answer.errors().equals(Map.of("id", "WRONG_TYPE"));
    }

    /** An answer may not even repeat the id that was asked for, but to say that it is no id. */
    private static boolean tells(Answer answer, Map<String, String> theirs, String asked) {
        if (answer.status() == 400) {
            return theirs.values().stream().anyMatch((answer.headers().map() + answer.body()
                    .replace("\"" + asked + "\"", ""))::contains);
        }
        var all = answer.headers().map() + answer.body();
        return theirs.values().stream().anyMatch(all::contains) || !asked.isEmpty() && all.contains(asked);
    }

    @Test
    void whatAPortalMayReadShowsItsOwnAloneWhateverIsAsked() {
        var open = Doors.TABLE.stream().filter(door -> door.method() == HttpMethod.GET
                && door.roles().contains(Role.PORTAL)).map(Doors.Door::path).collect(Collectors.toSet());
        open.removeAll(OF_BOTH);
        // what a portal may read besides the law; another line here needs a check like those below
        assertThat(open).containsExactlyInAnyOrder("/api/portal/containers", "/api/portal/containers/*",
                "/api/portal/sites", "/api/portal/sites/*");
        var theirs = theirs();
        var mine = given.customer();
        var site = given.site(mine);
        var own = given.registered();
        given.moved(own, site, "2026-11-20T09:00:00Z");
        var portal = api.asPortalOf(new CustomerId(mine));
        for (var list : List.of("/api/portal/containers", "/api/portal/sites")) {
            for (var query : List.of("", "?size=1000", "?customer=" + mine,
                    "?cursor=" + Cursor.after(UUID.fromString(theirs.get("container"))),
                    "?cursor=" + Cursor.after(new UUID(0, 0)))) {
                assertThat(tells(portal.get(list + query).expect(200), theirs, "")).as(list + query).isFalse();
            }
            assertThat(portal.get(list).at("/items")).hasSize(1);
        }
        assertThat(portal.get("/api/portal/containers").text("/items/0/id")).isEqualTo(own.toString());
        for (var one : List.of("/api/portal/containers/" + own, "/api/portal/sites/" + site)) {
            assertThat(tells(portal.get(one).expect(200), theirs, "")).as(one).isFalse();
        }
    }

    @Test
    void foreignAndUnknownAreAlikeInStatusBodyAndHeaders() {
        var portal = api.asPortalOf(new CustomerId(given.customer()));
        var theirs = given.customer();
        for (var format : List.of("", "&size=1", "&size=0", "&cursor=!!")) {
            var foreign = portal.get("/api/portal/containers?customer=" + theirs + format);
            var nobody = portal.get("/api/portal/containers?customer=" + UUID.randomUUID() + format);
            assertThat(foreign.status()).isEqualTo(nobody.status()).isBetween(400, 404);
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
