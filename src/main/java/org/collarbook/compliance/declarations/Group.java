package org.collarbook.compliance.declarations;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Size;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/**
 * The containers that a declaration is about: those that meet every condition given. What is not known of a container
 * meets none, and a record that was merged into another is in no group.
 */
record Group(@Nullable List<UUID> containers, @Nullable UUID site, @Nullable UUID customer,
        @Nullable Specification specification, @Nullable MakerSymbol maker, @Nullable Size size,
        @Nullable YearMonth manufacturedFrom, @Nullable YearMonth manufacturedTo, @Nullable ContainerKind kind) {

    private static final String MEMBERS = """
            from container c left join placement p on p.container_id = c.id left join site s on s.id = p.site_id
            where not exists (select from absorbed a where a.container_id = c.id)""";

    /** Statements about the containers {@code c} of a group end in this, with {@link #parameters}. */
    String members() {
        var conditions = new ArrayList<String>();
        add(conditions, containers, "c.id = any (:containers)");
        add(conditions, site, "p.site_id = :site");
        add(conditions, customer, "s.customer_id = :customer");
        add(conditions, specification, "c.specification = :specification");
        add(conditions, maker, "c.maker = :maker");
        add(conditions, size, "c.size = :size");
        add(conditions, manufacturedFrom, "c.manufactured >= :from");
        add(conditions, manufacturedTo, "c.manufactured <= :to");
        add(conditions, kind, "c.kind = :kind");
        return MEMBERS + String.join("", conditions);
    }

    private static void add(List<String> conditions, @Nullable Object told, String condition) {
        if (told != null) {
            conditions.add(" and " + condition);
        }
    }

    boolean isEverything() {
        return parameters().isEmpty();
    }

    Map<String, Object> parameters() {
        var parameters = new HashMap<String, Object>();
        put(parameters, "containers", containers == null ? null : containers.toArray(UUID[]::new));
        put(parameters, "site", site);
        put(parameters, "customer", customer);
        put(parameters, "specification", specification == null ? null : specification.toString());
        put(parameters, "maker", maker == null ? null : maker.value());
        put(parameters, "size", size == null ? null : size.word());
        put(parameters, "from", manufacturedFrom == null ? null : manufacturedFrom.atDay(1));
        put(parameters, "to", manufacturedTo == null ? null : manufacturedTo.atDay(1));
        put(parameters, "kind", kind == null ? null : kind.name());
        return parameters;
    }

    private static void put(Map<String, Object> parameters, String name, @Nullable Object value) {
        if (value != null) {
            parameters.put(name, value);
        }
    }
}
