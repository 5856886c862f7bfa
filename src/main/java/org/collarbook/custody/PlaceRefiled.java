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
    private final Standing standing;

    PlaceRefiled(JdbcClient jdbc, Standing standing) {
        this.jdbc = jdbc;
        this.standing = standing;
    }

    /** Before anybody judges by where it stands. */
    @EventListener
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void on(RecordsRefiled event) {
        jdbc.sql("delete from placement where container_id = any (?)")
                .param(event.containerIds().toArray(UUID[]::new)).update();
        standing.settle(event.containerIds());
    }
}
