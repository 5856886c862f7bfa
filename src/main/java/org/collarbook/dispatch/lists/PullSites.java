package org.collarbook.dispatch.lists;

import java.util.List;
import java.util.Locale;
import java.util.UUID;

import org.collarbook.custody.NamedPlace;
import org.collarbook.custody.NamedPlace.Kind;
import org.collarbook.custody.Places;
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

    private final Places places;
    private final JdbcClient jdbc;

    PullSites(Places places, JdbcClient jdbc) {
        this.places = places;
        this.jdbc = jdbc;
    }

    record Found(String title, List<UUID> sites) {}

    Found site(String name) {
        var site = named(Kind.SITE, "site", name);
        return new Found("Site " + site.code() + ", " + site.name(), List.of(site.id()));
    }

    Found customer(String name) {
        var customer = named(Kind.CUSTOMER, "customer", name);
        return new Found("Customer " + customer.code() + ", " + customer.name(),
                jdbc.sql("select id from site where customer_id = ?").param(customer.id()).query(UUID.class).list());
    }

    /** By great-circle distance on a sphere of the earth's mean radius (IUGG), 6,371 km. */
    Found near(PullArea.Near near) {
        return new Found(
                String.format(Locale.ROOT, "Within %s km of %s, %s", near.kilometres(), near.latitude(),
                        near.longitude()),
                jdbc.sql(NEAR).param("lat", near.latitude()).param("lon", near.longitude())
                        .param("km", near.kilometres()).query(UUID.class).list());
    }

    NamedPlace depot(String name) {
        return named(Kind.DEPOT, "site", name);
    }

    private NamedPlace named(Kind kind, String what, String name) {
        return places.named(kind, name).orElseThrow(() -> Problem.notFound(what).asException());
    }
}
