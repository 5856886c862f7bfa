package org.collarbook.schedule;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** The rows that are asked for; a null leaves that side open. Size, specification and owner are as rows have them. */
record ScheduleFilter(@Nullable YearMonth from, @Nullable YearMonth to, @Nullable UUID site, @Nullable UUID customer,
        @Nullable UUID route, @Nullable ContainerKind kind, @Nullable String containerSize,
        @Nullable String specification, @Nullable Requirement requirement, @Nullable Status status,
        @Nullable String owner) {

    static final ScheduleFilter EVERYTHING = new ScheduleFilter(null, null, null, null, null, null, null, null, null,
            null, null);

    /** The distributor itself, among the names of owners. */
    static final String OWN = "OWN";

    /** What narrows the containers of a site and month; empty where each has all of its own. */
    ScheduleFilter ofContainers() {
        return new ScheduleFilter(null, null, null, null, null, kind, containerSize, specification, requirement, status,
                owner);
    }

    /** For what has no month, and so no status that is derived from one. */
    ScheduleFilter withoutMonths() {
        return new ScheduleFilter(null, null, site, customer, route, kind, containerSize, specification, requirement,
                null, owner);
    }

    ScheduleFilter inYear(int year) {
        var first = YearMonth.of(year, 1);
        var last = YearMonth.of(year, 12);
        return new ScheduleFilter(from == null || from.isBefore(first) ? first : from,
                to == null || to.isAfter(last) ? last : to, site, customer, route, kind, containerSize, specification,
                requirement, status, owner);
    }

    /** The conditions, over the aliases of {@link ScheduleRows}. */
    String where() {
        return "r.due is not null" + conditions();
    }

    String conditions() {
        var where = new StringBuilder();
        parameters().keySet().forEach(name -> where.append(" and ").append(switch (name) {
            case "from" -> "r.due >= :from";
            case "to" -> "r.due <= :to";
            case "site" -> "r.site_id = :site";
            case "customer" -> "r.customer_id = :customer";
            case "route" -> "r.site_id in (select stop.site_id from route_stop stop where stop.route_id = :route)";
            case "kind" -> "c.kind = :kind";
            case "container_size" -> "c.size = :container_size";
            case "specification" -> "c.specification = :specification";
            case "requirement" -> "r.requirement = :requirement";
            case "status" -> ScheduleRows.STATUS + " = :status";
            case "owner" -> OWN.equals(owner) ? "c.owned" : "c.owned is not true and lower(c.owner) = lower(:owner)";
            default -> throw new IllegalStateException(name);
        }));
        return where.toString();
    }

    Map<String, Object> parameters() {
        var parameters = new LinkedHashMap<String, Object>();
        put(parameters, "from", firstDay(from));
        put(parameters, "to", firstDay(to));
        put(parameters, "site", site);
        put(parameters, "customer", customer);
        put(parameters, "route", route);
        put(parameters, "kind", kind == null ? null : kind.name());
        put(parameters, "container_size", containerSize);
        put(parameters, "specification", specification);
        put(parameters, "requirement", requirement == null ? null : requirement.name());
        put(parameters, "status", status == null ? null : status.name());
        put(parameters, "owner", owner);
        return parameters;
    }

    private static void put(Map<String, Object> parameters, String name, @Nullable Object value) {
        if (value != null) {
            parameters.put(name, value);
        }
    }

    private static @Nullable LocalDate firstDay(@Nullable YearMonth month) {
        return month == null ? null : month.atDay(1);
    }
}
