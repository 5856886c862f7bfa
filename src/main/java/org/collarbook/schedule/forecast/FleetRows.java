package org.collarbook.schedule.forecast;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.collarbook.schedule.forecast.Question.Fleet;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Component;

/** Which containers a forecast is about. */
@Component
class FleetRows {

    private static final UUID BEFORE_ALL = new UUID(0, 0);
    private static final String OF_DEPOT = """
            (s.id = :depot or s.id in (select vehicle_id from route where depot_id = :depot)
             or s.id in (select t.site_id from route_stop t join route r on r.id = t.route_id
                 where r.depot_id = :depot))""";

    private final JdbcClient jdbc;

    FleetRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An id of nothing would read as if nothing fell due. */
    void refuseUnknown(Fleet fleet, Inputs inputs) {
        refuse("/filter/site", "UNKNOWN_SITE", "site where true", fleet.site(), "the id of a site", inputs);
        refuse("/filter/customer", "UNKNOWN_CUSTOMER", "customer where true", fleet.customer(),
                "the id of a customer", inputs);
        refuse("/filter/depot", "UNKNOWN_DEPOT", "site where kind = 'DEPOT'", fleet.depot(),
                "the id of a site of the kind DEPOT", inputs);
    }

    private void refuse(String pointer, String code, String from, @Nullable UUID id, String accepted, Inputs inputs) {
        if (id != null && !jdbc.sql("select exists (select from " + from + " and id = ?)").param(id)
                .query(Boolean.class).single()) {
            inputs.refuse(pointer, code, id.toString(), accepted);
        }
    }

    /** How many there are, but not more than {@code most}. */
    int count(Fleet fleet, int most) {
        return asked("select count(*) from (select c.id", fleet, " limit :most) as found").param("most", most)
                .query(Integer.class).single();
    }

    /** The next of them in the order of their ids; the first where {@code after} is null. */
    List<UUID> after(@Nullable UUID after, Fleet fleet, int atMost) {
        return asked("select c.id", fleet, " and c.id > :after order by c.id limit :most")
                .param("after", after == null ? BEFORE_ALL : after).param("most", atMost).query(UUID.class).list();
    }

    private StatementSpec asked(String select, Fleet fleet, String end) {
        var sql = new StringBuilder(select).append(" from container c");
        if (fleet.site() != null || fleet.customer() != null || fleet.depot() != null) {
            sql.append(" join placement p on p.container_id = c.id join site s on s.id = p.site_id");
        }
        sql.append(" where not exists (select from absorbed a where a.container_id = c.id)");
        sql.append(fleet.site() == null ? "" : " and s.id = :site");
        sql.append(fleet.customer() == null ? "" : " and s.customer_id = :customer");
        sql.append(fleet.kind() == null ? "" : " and c.kind = :kind");
        sql.append(fleet.depot() == null ? "" : " and " + OF_DEPOT);
        return jdbc.sql(sql.append(end).toString()).param("site", fleet.site()).param("customer", fleet.customer())
                .param("depot", fleet.depot()).param("kind", fleet.kind() == null ? null : fleet.kind().name());
    }
}
