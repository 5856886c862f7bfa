package org.collarbook.registry;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * What was registered, every correction, and how the container stood recorded after each: the row itself changes, so each
 * of its versions is a fact of its own, of which the table still tells the last.
 */
@Component
class RegistryFacts implements Journalled {

    private static final String CORRECTIONS = """
            select m.id, m.container_id, 'CORRECTED' as kind, m.recorded_at as occurred_at, m.recorded_at,
                m.recorded_by, to_json(m) as content, null::json as more
            from mark_correction m where m.container_id =\s""" + ASKED;

    private static final String VERSIONS = """
            select md5(c.id || '/' || c.version)::uuid as id, c.id as container_id,
                case c.version when 0 then '%s' else '%s' end as kind,
                coalesce(last.recorded_at, c.registered_at) as occurred_at,
                coalesce(last.recorded_at, c.registered_at) as recorded_at,
                coalesce(last.recorded_by, c.registered_by) as recorded_by, to_json(c) as content, null::json as more
            from container c left join lateral (
                select recorded_at, recorded_by from mark_correction where container_id = c.id and c.version > 0
                order by recorded_at desc limit 1) last on true
            where c.id = %s""".formatted(JournalFact.FIRST_VERSION, JournalFact.LATER_VERSION, ASKED);

    private final JdbcClient jdbc;

    RegistryFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<String> selects() {
        return List.of(CORRECTIONS, VERSIONS);
    }

    @Override
    public List<UUID> containersAfter(UUID container, int atMost) {
        return jdbc.sql("select id from container where id > ? order by id limit ?").params(container, atMost)
                .query(UUID.class).list();
    }
}
