package org.collarbook.registry;

import java.util.List;

import org.collarbook.platform.Journalled;
import org.springframework.stereotype.Component;

/** Merges, splits and what undid them, in the chains of both records: an entry of each says what it was to that one. */
@Component
class IdentityFacts implements Journalled {

    private static final String ACTS = """
            select a.id, a.%1$s_id as container_id, case a.kind when 'MERGE' then '%2$s' else '%3$s' end as kind,
                a.recorded_at as occurred_at, a.recorded_at, a.recorded_by, to_json(a) as content, null::json as more
            from identity_act a where a.%1$s_id = %4$s""";

    private static final String UNDONE = """
            select a.id, a.%1$s_id as container_id,
                case a.kind when 'MERGE' then '%2$s_UNDONE' else '%3$s_UNDONE' end as kind,
                u.recorded_at as occurred_at, u.recorded_at, u.recorded_by, to_json(u) as content, null::json as more
            from identity_act a join identity_act_undo u on u.act_id = a.id where a.%1$s_id = %4$s""";

    @Override
    public List<String> selects() {
        return List.of(ACTS.formatted("from", "MERGED", "SPLIT", ASKED),
                ACTS.formatted("into", "ABSORBED", "SPLIT_OFF", ASKED),
                UNDONE.formatted("from", "MERGED", "SPLIT", ASKED),
                UNDONE.formatted("into", "ABSORBED", "SPLIT_OFF", ASKED));
    }
}
