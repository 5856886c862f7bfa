package org.collarbook.custody.routes;

import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.platform.Revision;
import org.collarbook.registry.Size;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** How many cylinders of each size a vehicle's rack takes. */
@Component
public class Racks {

    /** Zero places: none fits. A size that is not named is not known. */
    public record Rack(int version, Map<String, Integer> places) {}

    private final JdbcClient jdbc;

    Racks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Rack of(UUID vehicle) {
        var places = new TreeMap<String, Integer>();
        int version = jdbc.sql("select version from rack_version where vehicle_id = ?").param(vehicle)
                .query(Integer.class).optional().orElse(0);
        jdbc.sql("select size, places from rack where vehicle_id = ?").param(vehicle)
                .query(row -> {
                    places.put(row.getString("size"), row.getInt("places"));
                });
        return new Rack(version, places);
    }

    /** Takes the place of the whole rack. Refuses by problem a missing or stale {@code If-Match}. */
    @Transactional
    public Rack set(UUID vehicle, @Nullable String ifMatch, Map<Size, Integer> places) {
        jdbc.sql("insert into rack_version (vehicle_id, version) values (?, 0) on conflict do nothing").param(vehicle)
                .update();
        int version = jdbc.sql("select version from rack_version where vehicle_id = ? for update").param(vehicle)
                .query(Integer.class).single();
        new Revision(version).requireMatch(ifMatch);
        jdbc.sql("update rack_version set version = version + 1 where vehicle_id = ?").param(vehicle).update();
        jdbc.sql("delete from rack where vehicle_id = ?").param(vehicle).update();
        places.forEach((size, number) -> jdbc.sql("insert into rack (vehicle_id, size, places) values (?, ?, ?)")
                .params(vehicle, size.word(), number).update());
        return of(vehicle);
    }
}
