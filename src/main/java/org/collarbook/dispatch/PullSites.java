package org.collarbook.dispatch;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Problem;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The sites of an area. */
@Component
class PullSites {

    private static final String NEAR = """
            select id from site
            where latitude between :lat - :km / 111.0 and :lat + :km / 111.0
              and 2 * 6371.0 * asin(least(1, sqrt(
                    power(sin(radians(latitude - :lat) / 2), 2)
                    + cos(radians(:lat)) * cos(radians(latitude)) * power(sin(radians(longitude - :lon) / 2), 2)))) <= :km
            """;

    private final JdbcClient jdbc;

    PullSites(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<UUID> in(PullArea area) {
        return switch (area) {
            case PullArea.OneSite(var site) ->
                named("site", site, "select id from site where code = ? or id::text = ?");
            case PullArea.OneCustomer(var customer) -> {
                var id = named("customer", customer, "select id from customer where code = ? or id::text = ?");
                yield jdbc.sql("select id from site where customer_id = ?").param(id.getFirst()).query(UUID.class)
                        .list();
            }
            // great-circle distance on a sphere of the earth's mean radius (IUGG), 6,371 km
            case PullArea.Near(double latitude, double longitude, double kilometres) -> jdbc.sql(NEAR)
                    .param("lat", latitude).param("lon", longitude).param("km", kilometres).query(UUID.class).list();
        };
    }

    private List<UUID> named(String what, String name, String sql) {
        var found = jdbc.sql(sql).params(name, name).query(UUID.class).list();
        if (found.isEmpty()) {
            throw Problem.notFound(what).asException();
        }
        return found;
    }
}
