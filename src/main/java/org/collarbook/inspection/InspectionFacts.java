package org.collarbook.inspection;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** What was done to containers. A mark bears no day, so it happened at the beginning of its month at the earliest. */
@Component
class InspectionFacts implements Journalled {

    /** With the full contents of the record, where it is more than a mark. */
    private static final String REQUALIFICATIONS = """
            select q.id, q.container_id, 'REQUALIFIED' as kind, q.recorded_at, q.recorded_by,
                coalesce(q.performed_on, q.month)::timestamp at time zone 'UTC' as occurred_at,
                to_json(q) as content, to_json(t) as more
            from requalification q left join test_record t on t.requalification_id = q.id
            where q.container_id =\s""" + ASKED;

    private static final String CORRECTIONS = """
            select k.id, q.container_id, 'REQUALIFICATION_CORRECTED' as kind, k.recorded_at, k.recorded_by,
                k.recorded_at as occurred_at, to_json(k) as content, null::json as more
            from requalification_correction k join requalification q on q.id = k.corrects
            where q.container_id =\s""" + ASKED;

    private static final String REPAIRS = """
            select r.id, r.container_id, 'REPAIRED' as kind, r.recorded_at, r.recorded_by,
                r.performed_on::timestamp at time zone 'UTC' as occurred_at, to_json(r) as content, null::json as more
            from repair r where r.container_id =\s""" + ASKED;

    private static final String REPAIR_CORRECTIONS = """
            select k.id, r.container_id, 'REPAIR_CORRECTED' as kind, k.recorded_at, k.recorded_by,
                k.recorded_at as occurred_at, to_json(k) as content, null::json as more
            from repair_correction k join repair r on r.id = k.corrects
            where r.container_id =\s""" + ASKED;

    @Override
    public List<String> selects() {
        return List.of(REQUALIFICATIONS, CORRECTIONS, REPAIRS, REPAIR_CORRECTIONS);
    }
}
