package org.collarbook.custody;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** Where containers went and were seen, the gas put into them, what was found of that later, that they were empty, gauges. */
@Component
class CustodyFacts implements Journalled {

    private static final String MOVEMENTS = """
            select m.id, m.container_id, 'MOVED' as kind, m.occurred_at, m.recorded_at, m.recorded_by,
                to_json(m) as content, null::json as more
            from movement m where m.container_id =\s""" + ASKED;

    private static final String SIGHTINGS = """
            select g.id, g.container_id, 'SEEN' as kind, g.occurred_at, g.recorded_at, g.recorded_by,
                to_json(g) as content, null::json as more
            from sighting g where g.container_id =\s""" + ASKED;

    /** Of a fill in a ledger the day is known at most. */
    private static final String FILLS = """
            select f.id, f.container_id, 'FILLED' as kind, f.recorded_at, f.recorded_by,
                coalesce(f.filled_at, f.filled_on::timestamp at time zone 'UTC') as occurred_at,
                to_json(f) as content, null::json as more
            from fill f where f.container_id =\s""" + ASKED;

    private static final String EMPTYINGS = """
            select e.id, e.container_id, 'EMPTIED' as kind, e.emptied_at as occurred_at, e.recorded_at, e.recorded_by,
                to_json(e) as content, null::json as more
            from emptying e where e.container_id =\s""" + ASKED;

    private static final String READINGS = """
            select g.id, g.container_id, 'GAUGED' as kind, g.gauged_at as occurred_at, g.recorded_at, g.recorded_by,
                to_json(g) as content, null::json as more
            from reading g where g.container_id =\s""" + ASKED;

    private static final String FLAGS = """
            select g.id, g.container_id, g.recorded_at as occurred_at, g.recorded_at, g.recorded_by,
                case when g.reasons = '[]' then 'FILL_CLEARED' else 'FILL_FLAGGED' end as kind,
                to_json(g) as content, null::json as more
            from fill_flag g where g.container_id =\s""" + ASKED;

    @Override
    public List<String> selects() {
        return List.of(MOVEMENTS, SIGHTINGS, FILLS, EMPTYINGS, READINGS, FLAGS);
    }
}
