package org.collarbook.holds;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** What kept containers out of service, a recall among it, and what lifted it. */
@Component
class HoldFacts implements Journalled {

    private static final String HOLDS = """
            select h.id, h.container_id, 'HELD' as kind, h.occurred_at, h.recorded_at, h.recorded_by,
                to_json(h) as content, null::json as more
            from hold h where h.container_id =\s""" + ASKED;

    private static final String LIFTS = """
            select l.id, h.container_id, 'HOLD_LIFTED' as kind, l.occurred_at, l.recorded_at, l.recorded_by,
                to_json(l) as content, null::json as more
            from hold_lift l join hold h on h.id = l.hold_id where h.container_id =\s""" + ASKED;

    @Override
    public List<String> selects() {
        return List.of(HOLDS, LIFTS);
    }
}
