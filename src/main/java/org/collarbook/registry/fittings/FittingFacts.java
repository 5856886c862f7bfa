package org.collarbook.registry.fittings;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** Parts fitted and taken out, and when tanks went out of service and came back. */
@Component
class FittingFacts implements Journalled {

    private static final String PARTS = """
            select p.id, p.container_id, 'PART_FITTED' as kind, p.recorded_at, p.recorded_by,
                p.fitted_on::timestamp at time zone 'UTC' as occurred_at, to_json(p) as content, null::json as more
            from part p where p.container_id =\s""" + ASKED;

    private static final String REMOVALS = """
            select r.part_id as id, p.container_id, 'PART_REMOVED' as kind, r.recorded_at, r.recorded_by,
                r.removed_on::timestamp at time zone 'UTC' as occurred_at, to_json(r) as content, null::json as more
            from part_removal r join part p on p.id = r.part_id where p.container_id =\s""" + ASKED;

    private static final String OUT_OF_SERVICE = """
            select o.id, o.container_id, 'OUT_OF_SERVICE' as kind, o.recorded_at, o.recorded_by,
                o.since::timestamp at time zone 'UTC' as occurred_at, to_json(o) as content, null::json as more
            from out_of_service o where o.container_id =\s""" + ASKED;

    private static final String RETURNS = """
            select b.out_of_service_id as id, o.container_id, 'RETURNED_TO_SERVICE' as kind, b.recorded_at,
                b.recorded_by, b.returned_on::timestamp at time zone 'UTC' as occurred_at, to_json(b) as content,
                null::json as more
            from return_to_service b join out_of_service o on o.id = b.out_of_service_id
            where o.container_id =\s""" + ASKED;

    @Override
    public List<String> selects() {
        return List.of(PARTS, REMOVALS, OUT_OF_SERVICE, RETURNS);
    }
}
