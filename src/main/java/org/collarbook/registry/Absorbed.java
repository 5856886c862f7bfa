package org.collarbook.registry;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Problem;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Records that another one has absorbed: they are closed, and what is looked up by them is the other one. */
@Component
public class Absorbed {

    private final JdbcClient jdbc;

    Absorbed(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The record that counts for this one, where it is closed. */
    public Optional<UUID> into(UUID container) {
        return jdbc.sql("select into_id from absorbed where container_id = ?").param(container).query(UUID.class)
                .optional();
    }

    /** The records that this one has absorbed, at whatever remove. */
    public List<UUID> by(UUID container) {
        return jdbc.sql("select container_id from absorbed where into_id = ? order by container_id").param(container)
                .query(UUID.class).list();
    }

    /** The same of each that has absorbed any. */
    public Map<UUID, List<UUID>> byEach(Collection<UUID> containers) {
        var absorbed = new HashMap<UUID, List<UUID>>();
        jdbc.sql("select into_id, container_id from absorbed where into_id = any (?) order by into_id, container_id")
                .param(containers.toArray(UUID[]::new)).query(row -> {
                    absorbed.computeIfAbsent(row.getObject(1, UUID.class), id -> new ArrayList<>())
                            .add(row.getObject(2, UUID.class));
                });
        return absorbed;
    }

    /** Those of the records that are closed. */
    public List<UUID> among(Collection<UUID> containers) {
        return jdbc.sql("select container_id from absorbed where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(UUID.class).list();
    }

    /** The records on which facts were recorded that now count for these. */
    public List<UUID> recordedOn(Collection<UUID> containers) {
        return jdbc.sql("select distinct recorded_on from refiled where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(UUID.class).list();
    }

    /** Refuses by problem what is closed, naming the record that counts. */
    public void refuse(UUID container) {
        into(container).ifPresent(counts -> {
            throw Problem.conflict("MERGED", "Record " + container + " was merged into " + counts + ", which counts for"
                    + " this container. Nothing was stored: use that one.").with("container", counts).asException();
        });
    }

    /** The same for a batch that looked them up before: none is closed, and none is until the transaction ends. */
    void refuseClosedMeanwhile(Collection<UUID> containers) {
        var ids = containers.toArray(UUID[]::new);
        jdbc.sql("select id from container where id = any (?) order by id for key share").param(ids).query(UUID.class)
                .list();
        var closed = among(containers);
        if (!closed.isEmpty()) {
            throw new OptimisticLockingFailureException("records " + closed + " were merged into others meanwhile");
        }
    }
}
