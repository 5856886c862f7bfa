package org.collarbook.custody;

import java.util.UUID;

import org.collarbook.registry.RecordsRefiled;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A container stands where the latest of the movements that count for it took it, and a closed record nowhere. */
@Component
class PlaceRefiled {

    private final JdbcClient jdbc;

    PlaceRefiled(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Before anybody judges by where it stands. */
    @EventListener
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void on(RecordsRefiled event) {
        var ids = event.containerIds().toArray(UUID[]::new);
        jdbc.sql("delete from placement where container_id = any (?)").param(ids).update();
        jdbc.sql("""
                insert into placement (container_id, site_id, movement_id, since)
                select distinct on (container_id) container_id, to_site_id, id, occurred_at from filed_movement
                where container_id = any (?)
                order by container_id, occurred_at desc, recorded_at desc, id desc""").param(ids).update();
    }
}
