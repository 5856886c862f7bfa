package org.collarbook.compliance.transport;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** The moves of tanks by road. */
@Component
class TransportFacts implements Journalled {

    private static final String MOVES = """
            select t.id, t.container_id, 'TRANSPORTED' as kind, t.moved_on::timestamp at time zone 'UTC' as occurred_at,
                t.recorded_at, t.recorded_by, to_json(t) as content, null::json as more
            from transport_record t where t.container_id =\s""" + ASKED;

    @Override
    public List<String> selects() {
        return List.of(MOVES);
    }
}
