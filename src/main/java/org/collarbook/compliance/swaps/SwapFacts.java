package org.collarbook.compliance.swaps;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** Which movements were one swap, in the chains of both containers. */
@Component
class SwapFacts implements Journalled {

    private static final String SELECT = """
            select w.id, m.container_id, '%1$s' as kind, w.occurred_at, w.recorded_at, w.recorded_by,
                to_json(w) as content, null::json as more
            from swap w join movement m on m.id = w.%2$s where m.container_id =\s""" + ASKED;

    @Override
    public List<String> selects() {
        return List.of(SELECT.formatted("SWAPPED_OUT", "out_movement_id"),
                SELECT.formatted("SWAPPED_IN", "in_movement_id"));
    }
}
