package org.collarbook.registry;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Files facts under another record, and keeps what follows from the acts: where each counts, and what is closed. */
@Component
public class Refiling {

    private final JdbcClient jdbc;
    private final List<FactTable> tables;

    Refiling(JdbcClient jdbc, List<FactTable> tables) {
        this.jdbc = jdbc;
        this.tables = tables;
    }

    /** All that counts for the one record counts for the other from now on. */
    void all(UUID act, UUID from, UUID into) {
        for (var table : tables) {
            jdbc.sql("insert into identity_act_fact (act_id, fact_id, kind, from_id, into_id)"
                    + " select :act, id, :kind, container_id, :into from filed_" + table.name()
                    + " where container_id = :from").param("act", act).param("kind", table.name())
                    .param("from", from).param("into", into).update();
        }
        file(act, "into_id");
    }

    /** Those of the facts that count for the one record; how many there were. */
    int some(UUID act, Collection<UUID> facts, UUID from, UUID into) {
        int moved = 0;
        for (var table : tables) {
            moved += jdbc.sql("insert into identity_act_fact (act_id, fact_id, kind, from_id, into_id)"
                    + " select :act, id, :kind, container_id, :into from filed_" + table.name()
                    + " where container_id = :from and id = any (:facts)").param("act", act)
                    .param("kind", table.name()).param("from", from).param("into", into)
                    .param("facts", facts.toArray(UUID[]::new)).update();
        }
        file(act, "into_id");
        return moved;
    }

    void back(UUID act) {
        file(act, "from_id");
    }

    private void file(UUID act, String under) {
        for (var table : tables) {
            jdbc.sql("insert into refiled (fact_id, kind, container_id, recorded_on) select f.id, :kind, a." + under
                    + ", f.container_id from identity_act_fact a join " + table.name() + " f on f.id = a.fact_id"
                    + " where a.act_id = :act and a.kind = :kind"
                    + " on conflict (fact_id) do update set container_id = excluded.container_id")
                    .param("act", act).param("kind", table.name()).update();
        }
        jdbc.sql("delete from refiled r using identity_act_fact a where a.act_id = ? and r.fact_id = a.fact_id"
                + " and r.container_id = r.recorded_on").param(act).update();
    }

    /** The record on which a fact was recorded that counts for another one now. */
    public Optional<UUID> recordedOn(UUID fact) {
        return jdbc.sql("select recorded_on from refiled where fact_id = ?").param(fact).query(UUID.class).optional();
    }

    /** A fact recorded in place of another one is filed wherever that one is, whatever becomes of the acts. */
    public void likeThat(UUID fact, UUID other) {
        jdbc.sql("insert into identity_act_fact (act_id, fact_id, kind, from_id, into_id) select act_id, :fact, kind,"
                + " from_id, into_id from identity_act_fact a where fact_id = :other and not exists"
                + " (select from identity_act_undo u where u.act_id = a.act_id)").param("fact", fact)
                .param("other", other).update();
        jdbc.sql("insert into refiled (fact_id, kind, container_id, recorded_on) select :fact, kind, container_id,"
                + " recorded_on from refiled where fact_id = :other").param("fact", fact).param("other", other)
                .update();
    }

    void close(UUID record, UUID into) {
        jdbc.sql("update absorbed set into_id = ? where into_id = ?").params(into, record).update();
        jdbc.sql("insert into absorbed (container_id, into_id) values (?, ?)").params(record, into).update();
    }

    /** What it had absorbed itself it has again. */
    void open(UUID record) {
        jdbc.sql("delete from absorbed where container_id = ?").param(record).update();
        jdbc.sql("""
                with recursive below (id) as (
                  select cast(:record as uuid)
                  union
                  select a.from_id from identity_act a join below b on a.into_id = b.id
                  where a.kind = 'MERGE' and not exists (select from identity_act_undo u where u.act_id = a.id))
                update absorbed set into_id = :record
                where container_id in (select id from below) and container_id <> :record""").param("record", record)
                .update();
    }
}
