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

/** What the clerk asks for, as query parameters; a null leaves that side open. */
record ScheduleFilter(@Nullable YearMonth from, @Nullable YearMonth to, @Nullable UUID site, @Nullable UUID customer,
        @Nullable ContainerKind kind, @Nullable Requirement requirement, @Nullable Status status) {

    /** The conditions, over the aliases of {@link ScheduleRows}. */
    String where() {
        var where = new StringBuilder("r.due is not null");
        parameters().keySet().forEach(name -> where.append(" and ").append(switch (name) {
            case "from" -> "r.due >= :from";
            case "to" -> "r.due <= :to";
            case "site" -> "r.site_id = :site";
            case "customer" -> "r.customer_id = :customer";
            case "kind" -> "c.kind = :kind";
            case "requirement" -> "r.requirement = :requirement";
            case "status" -> ScheduleRows.STATUS + " = :status";
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
        put(parameters, "kind", kind == null ? null : kind.name());
        put(parameters, "requirement", requirement == null ? null : requirement.name());
        put(parameters, "status", status == null ? null : status.name());
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
