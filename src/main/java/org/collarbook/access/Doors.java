package org.collarbook.access;

import static org.collarbook.access.Role.ADMINISTRATOR;
import static org.collarbook.access.Role.CLERK;
import static org.collarbook.access.Role.DISPATCHER;
import static org.collarbook.access.Role.FILLER;
import static org.collarbook.access.Role.PORTAL;
import static org.collarbook.access.Role.YARD;

import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

import org.springframework.http.HttpMethod;
import org.springframework.http.server.PathContainer;
import org.springframework.web.util.pattern.PathPattern;
import org.springframework.web.util.pattern.PathPatternParser;

/**
 * Every endpoint and who may use it: the one place to read or change. What is not listed is closed, and a test fails
 * when an endpoint is missing here.
 */
public final class Doors {

    private static final Set<Role> ALL = EnumSet.allOf(Role.class);
    private static final Set<Role> STAFF = EnumSet.of(FILLER, DISPATCHER, YARD, CLERK, ADMINISTRATOR);
    private static final Set<Role> OFFICE = EnumSet.of(CLERK, ADMINISTRATOR);
    private static final Set<Role> ADMINISTRATION = EnumSet.of(ADMINISTRATOR);
    /** Who works on containers, and records what was done to them. */
    private static final Set<Role> BENCH = EnumSet.of(YARD, CLERK, ADMINISTRATOR);
    private static final Set<Role> FILLING = EnumSet.of(FILLER, YARD, CLERK, ADMINISTRATOR);
    private static final Set<Role> DISPATCH = EnumSet.of(DISPATCHER, CLERK, ADMINISTRATOR);
    private static final Set<Role> CARRIAGE = EnumSet.of(DISPATCHER, YARD, CLERK, ADMINISTRATOR);
    private static final Set<Role> PORTAL_READERS = EnumSet.of(PORTAL, DISPATCHER, CLERK, ADMINISTRATOR);
    private static final Set<Role> NOTICES = EnumSet.of(PORTAL, CLERK, ADMINISTRATOR);
    private static final Set<Role> NOTICE_SECRETS = EnumSet.of(PORTAL, ADMINISTRATOR);

    /** Open to all who read: no key is asked for. */
    public static final List<String> OPEN = List.of("/actuator/health", "/actuator/health/**", "/api-docs",
            "/api-docs/**", "/api-docs.yaml", "/swagger-ui.html", "/swagger-ui/**", "/",
            // by a token of its own
            "/calendars/*");

    public static final List<Door> TABLE = List.of(
            // the decision
            door(HttpMethod.POST, "/api/assessments", ALL),
            door(HttpMethod.GET, "/api/fill-check", STAFF), door(HttpMethod.POST, "/api/fill-check", STAFF),
            // what was in it
            door(HttpMethod.POST, "/api/fills", FILLING),
            door(HttpMethod.GET, "/api/containers/*/fills", STAFF),
            door(HttpMethod.POST, "/api/containers/*/emptyings", FILLING),
            door(HttpMethod.GET, "/api/products", STAFF), door(HttpMethod.GET, "/api/products/*", STAFF),
            door(HttpMethod.POST, "/api/products", OFFICE), door(HttpMethod.PUT, "/api/products/*", OFFICE),
            // public law is anybody's to read
            door(HttpMethod.GET, "/api/rules", ALL),
            door(HttpMethod.GET, "/api/rules/coverage", ALL),
            door(HttpMethod.GET, "/api/rules/*", ALL),
            door(HttpMethod.GET, "/api/retention", ALL),
            // the register
            door(HttpMethod.GET, "/api/containers", STAFF), door(HttpMethod.GET, "/api/containers/*", STAFF),
            door(HttpMethod.GET, "/api/containers/*/assessment", STAFF),
            door(HttpMethod.POST, "/api/containers", BENCH),
            door(HttpMethod.PUT, "/api/containers/*", BENCH),
            door(HttpMethod.GET, "/api/containers/*/parts", STAFF),
            door(HttpMethod.POST, "/api/containers/*/parts", BENCH),
            door(HttpMethod.POST, "/api/containers/*/parts/*/removal", BENCH),
            door(HttpMethod.GET, "/api/containers/*/out-of-service", STAFF),
            door(HttpMethod.POST, "/api/containers/*/out-of-service", BENCH),
            door(HttpMethod.POST, "/api/containers/*/out-of-service/return", BENCH),
            door(HttpMethod.GET, "/api/containers/*/transport-records", STAFF),
            door(HttpMethod.POST, "/api/containers/*/transport-records",
                    CARRIAGE),
            door(HttpMethod.GET, "/api/training", CARRIAGE),
            door(HttpMethod.POST, "/api/training", OFFICE),
            door(HttpMethod.POST, "/api/stamps/readings", STAFF),
            // which one it is
            door(HttpMethod.GET, "/api/tags", STAFF),
            door(HttpMethod.POST, "/api/containers/*/tags", BENCH),
            door(HttpMethod.POST, "/api/containers/*/tag-removals", BENCH),
            door(HttpMethod.POST, "/api/containers/*/mark-corrections", OFFICE),
            door(HttpMethod.POST, "/api/mark-corrections/*/reversals", OFFICE),
            door(HttpMethod.GET, "/api/containers/*/identity", STAFF),
            door(HttpMethod.POST, "/api/containers/*/merges", OFFICE),
            door(HttpMethod.POST, "/api/containers/*/splits", OFFICE),
            door(HttpMethod.GET, "/api/identity-acts/*", STAFF),
            door(HttpMethod.POST, "/api/identity-acts/*/undo", OFFICE),
            door(HttpMethod.GET, "/api/containers/*/history", STAFF),
            door(HttpMethod.GET, "/api/audit/verification", OFFICE),
            // what an inspector asks for
            door(HttpMethod.GET, "/api/containers/*/audit-packet", OFFICE),
            door(HttpMethod.GET, "/api/sites/*/audit-packet", OFFICE),
            // places
            door(HttpMethod.GET, "/api/customers", STAFF), door(HttpMethod.GET, "/api/customers/*", STAFF),
            door(HttpMethod.POST, "/api/customers", OFFICE), door(HttpMethod.PUT, "/api/customers/*", OFFICE),
            door(HttpMethod.GET, "/api/sites", STAFF), door(HttpMethod.GET, "/api/sites/*", STAFF),
            door(HttpMethod.POST, "/api/sites", OFFICE), door(HttpMethod.PUT, "/api/sites/*", OFFICE),
            door(HttpMethod.POST, "/api/movements", CARRIAGE),
            door(HttpMethod.GET, "/api/containers/*/movements", STAFF),
            // when somebody is next there
            door(HttpMethod.GET, "/api/routes", STAFF), door(HttpMethod.GET, "/api/routes/*", STAFF),
            door(HttpMethod.POST, "/api/routes", DISPATCH),
            door(HttpMethod.PUT, "/api/routes/*", DISPATCH),
            door(HttpMethod.PUT, "/api/routes/*/exceptions/*", DISPATCH),
            door(HttpMethod.DELETE, "/api/routes/*/exceptions/*", DISPATCH),
            door(HttpMethod.GET, "/api/routes/*/visits", STAFF), door(HttpMethod.GET, "/api/sites/*/visits", STAFF),
            door(HttpMethod.GET, "/api/holidays", STAFF),
            door(HttpMethod.PUT, "/api/holidays/*", DISPATCH),
            door(HttpMethod.DELETE, "/api/holidays/*", DISPATCH),
            door(HttpMethod.GET, "/api/sites/*/rack", STAFF),
            door(HttpMethod.PUT, "/api/sites/*/rack", DISPATCH),
            // whoever sees it standing there says so
            door(HttpMethod.POST, "/api/sightings", STAFF),
            door(HttpMethod.GET, "/api/containers/*/sightings", STAFF),
            door(HttpMethod.GET, "/api/place-disputes", STAFF),
            // whoever looks at the gauge, and what sends it
            door(HttpMethod.POST, "/api/readings", STAFF), door(HttpMethod.GET, "/api/containers/*/readings", STAFF),
            door(HttpMethod.POST, "/api/swaps", CARRIAGE),
            door(HttpMethod.GET, "/api/sites/*/swaps", STAFF),
            // what stands beside the tanks of a site
            door(HttpMethod.GET, "/api/sites/*/extinguishers", STAFF),
            door(HttpMethod.POST, "/api/sites/*/extinguishers", BENCH),
            door(HttpMethod.POST, "/api/sites/*/extinguishers/*/records", BENCH),
            door(HttpMethod.DELETE, "/api/sites/*/extinguishers/*", BENCH),
            door(HttpMethod.GET, "/api/sites/*/requirements", STAFF),
            // what keeps a container out of service
            door(HttpMethod.GET, "/api/holds/reasons", STAFF),
            door(HttpMethod.GET, "/api/containers/*/holds", STAFF),
            // whoever sees the dent says so
            door(HttpMethod.POST, "/api/containers/*/holds", STAFF),
            // for the office a clerk's key is asked for besides
            door(HttpMethod.POST, "/api/holds/*/lifts", BENCH),
            door(HttpMethod.GET, "/api/declarations", OFFICE), door(HttpMethod.GET, "/api/declarations/*", OFFICE),
            door(HttpMethod.POST, "/api/declarations", OFFICE),
            door(HttpMethod.POST, "/api/declarations/previews", OFFICE),
            door(HttpMethod.POST, "/api/declarations/*/withdrawal", OFFICE),
            door(HttpMethod.GET, "/api/recalls", OFFICE), door(HttpMethod.GET, "/api/recalls/*", OFFICE),
            door(HttpMethod.POST, "/api/recalls", OFFICE), door(HttpMethod.POST, "/api/recalls/*/end", OFFICE),
            // the requalifier's bench
            door(HttpMethod.GET, "/api/requalifiers", STAFF), door(HttpMethod.GET, "/api/requalifiers/*", STAFF),
            door(HttpMethod.POST, "/api/requalifiers", OFFICE), door(HttpMethod.PUT, "/api/requalifiers/*", OFFICE),
            door(HttpMethod.GET, "/api/containers/*/requalifications", STAFF),
            door(HttpMethod.POST, "/api/containers/*/requalifications", BENCH),
            door(HttpMethod.GET, "/api/requalifications/*", STAFF),
            door(HttpMethod.POST, "/api/requalifications/*/corrections", BENCH),
            door(HttpMethod.GET, "/api/containers/*/repairs", STAFF),
            door(HttpMethod.POST, "/api/containers/*/repairs", BENCH),
            door(HttpMethod.POST, "/api/repairs/*/corrections", BENCH),
            // the ledger; owners and who declared what are in it
            door(HttpMethod.GET, "/api/ledger", OFFICE),
            door(HttpMethod.GET, "/api/imports/template", OFFICE), door(HttpMethod.POST, "/api/imports", OFFICE),
            door(HttpMethod.GET, "/api/imports/*", OFFICE), door(HttpMethod.GET, "/api/imports/*/lines", OFFICE),
            door(HttpMethod.POST, "/api/imports/*/commit", OFFICE),
            door(HttpMethod.POST, "/api/imports/*/cancel", OFFICE),
            door(HttpMethod.GET, "/api/column-maps", OFFICE), door(HttpMethod.GET, "/api/column-maps/*", OFFICE),
            door(HttpMethod.PUT, "/api/column-maps/*", OFFICE), door(HttpMethod.DELETE, "/api/column-maps/*", OFFICE),
            // what a depot that worked offline sends later; each line asks for the roles of its own endpoint
            door(HttpMethod.POST, "/api/scan-batches", STAFF), door(HttpMethod.GET, "/api/scan-batches/*", STAFF),
            door(HttpMethod.POST, "/api/demo", ADMINISTRATION),
            // the three lists
            door(HttpMethod.GET, "/api/pull-list", CARRIAGE),
            door(HttpMethod.GET, "/api/pull-list/place-unknown", CARRIAGE),
            door(HttpMethod.GET, "/api/routes/*/pull-list", CARRIAGE),
            // the plan that spreads the load
            door(HttpMethod.POST, "/api/pull-plans", DISPATCH), door(HttpMethod.GET, "/api/pull-plans", DISPATCH),
            door(HttpMethod.GET, "/api/pull-plans/*", DISPATCH),
            door(HttpMethod.GET, "/api/pull-plans/*/lines", DISPATCH),
            door(HttpMethod.GET, "/api/pull-plans/*/remainder", DISPATCH),
            door(HttpMethod.GET, "/api/pull-plans/*/weeks", DISPATCH),
            door(HttpMethod.GET, "/api/pull-plans/*/comparison", DISPATCH),
            door(HttpMethod.POST, "/api/pull-plans/*/cancellation", DISPATCH),
            door(HttpMethod.POST, "/api/pull-plans/*/acceptance", DISPATCH),
            door(HttpMethod.POST, "/api/forecasts", DISPATCH),
            door(HttpMethod.GET, "/api/schedule", DISPATCH),
            door(HttpMethod.GET, "/api/schedule/undetermined", DISPATCH),
            door(HttpMethod.GET, "/api/schedule/summary", DISPATCH),
            door(HttpMethod.POST, "/api/schedule-exports", DISPATCH),
            door(HttpMethod.GET, "/api/schedule-exports", DISPATCH),
            door(HttpMethod.GET, "/api/schedule-exports/*", DISPATCH),
            door(HttpMethod.POST, "/api/schedule-exports/*/cancellation", DISPATCH),
            door(HttpMethod.GET, "/api/schedule-exports/*/files/*", DISPATCH),
            door(HttpMethod.POST, "/api/calendar-feeds", DISPATCH),
            door(HttpMethod.GET, "/api/calendar-feeds", DISPATCH),
            door(HttpMethod.DELETE, "/api/calendar-feeds/*", DISPATCH),
            // what a customer's web site is built on; the staff names the customer
            door(HttpMethod.GET, "/api/portal/containers", PORTAL_READERS),
            door(HttpMethod.GET, "/api/portal/containers/*", PORTAL_READERS),
            door(HttpMethod.GET, "/api/portal/sites", PORTAL_READERS),
            door(HttpMethod.GET, "/api/portal/sites/*", PORTAL_READERS),
            door(HttpMethod.GET, "/api/customers/*/containers", DISPATCH),
            // what a customer's own system is told: a lasting way out of the house, so made like a key, or by the customer
            door(HttpMethod.POST, "/api/customers/*/notice-subscriptions", NOTICE_SECRETS),
            door(HttpMethod.GET, "/api/customers/*/notice-subscriptions", NOTICES),
            door(HttpMethod.GET, "/api/notice-subscriptions/*", NOTICES),
            door(HttpMethod.DELETE, "/api/notice-subscriptions/*", NOTICE_SECRETS),
            door(HttpMethod.POST, "/api/notice-subscriptions/*/secret-rotation", NOTICE_SECRETS),
            door(HttpMethod.POST, "/api/notice-subscriptions/*/pause", NOTICES),
            door(HttpMethod.POST, "/api/notice-subscriptions/*/resumption", NOTICES),
            door(HttpMethod.POST, "/api/notice-subscriptions/*/test", NOTICES),
            door(HttpMethod.POST, "/api/notice-subscriptions/*/replays", NOTICES),
            door(HttpMethod.GET, "/api/notice-subscriptions/*/notices", NOTICES),
            door(HttpMethod.GET, "/api/notice-subscriptions/*/attempts", NOTICES),
            // keys
            door(HttpMethod.GET, "/api/keys", ADMINISTRATION),
            door(HttpMethod.POST, "/api/keys", ADMINISTRATION),
            door(HttpMethod.POST, "/api/keys/*/rotation", ADMINISTRATION),
            door(HttpMethod.DELETE, "/api/keys/*", ADMINISTRATION),
            door(HttpMethod.GET, "/api/access-log", ADMINISTRATION));

    /** What changes nothing, though it is asked by POST. */
    static final Set<String> READS_BY_POST = Set.of("/api/assessments", "/api/fill-check", "/api/stamps/readings",
            "/api/declarations/previews", "/api/forecasts");

    private static final Map<Door, PathPattern> PATTERNS = TABLE.stream().collect(Collectors.toUnmodifiableMap(
            door -> door, door -> PathPatternParser.defaultInstance.parse(door.path)));

    /** One endpoint ({@code *} stands for one path segment) and the roles it opens to. */
    public record Door(HttpMethod method, String path, Set<Role> roles) {

        /** Who may read may also ask for the head of what is read. */
        List<HttpMethod> methods() {
            return method == HttpMethod.GET ? List.of(HttpMethod.GET, HttpMethod.HEAD) : List.of(method);
        }

        boolean takes(HttpMethod asked) {
            return methods().contains(asked);
        }
    }

    private Doors() {}

    /** Whether one of the roles may use the endpoint, which is written as in the table. */
    public static boolean isOpen(HttpMethod method, String path, Set<Role> roles) {
        return TABLE.stream().filter(door -> door.method.equals(method) && door.path.equals(path))
                .anyMatch(door -> door.roles.stream().anyMatch(roles::contains));
    }

    /** Those at a path as it was asked for, the one that is written out before those with a {@code *}. */
    static List<Door> at(String path) {
        var asked = PathContainer.parsePath(path);
        return PATTERNS.entrySet().stream().filter(door -> door.getValue().matches(asked)).map(Map.Entry::getKey)
                .sorted(Comparator.comparing(door -> door.path.endsWith("*"))).toList();
    }

    private static Door door(HttpMethod method, String path, Set<Role> roles) {
        return new Door(method, path, Set.copyOf(roles));
    }
}
