package org.collarbook.holds;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Accounts for every container that a recall concerns, as the register has them now. */
@Component
public class RecallReport {

    private static final String CONCERNED = """
            from recall r
            cross join container c
            cross join lateral (select %s as matches) m
            left join filed_hold h on h.container_id = c.id and h.recall_id = r.id
            left join lift_in_force l on l.hold_id = h.id
            where r.id = :recall and not exists (select from absorbed a where a.container_id = c.id)
              and (m.matches is not false or h.id is not null)
            """.formatted(RecallMatches.ALL);

    private static final String LIST = """
            select * from (select c.id, c.specification, c.maker, c.serial, c.manufactured,
                case when l.hold_id is not null then 'LIFTED' when h.id is not null then 'HELD'
                    when m.matches then 'MATCHED' else 'NOT_COMPARED' end as outcome,
                case when h.id is null and m.matches is null then array_remove(array[
                    case when %s is null then 'maker' end, case when %s is null then 'specification' end,
                    case when %s is null then 'serial' end, case when %s is null then 'manufactured' end], null)
                    else '{}' end as unknown
            """.formatted(RecallMatches.MAKER, RecallMatches.SPECIFICATION, RecallMatches.SERIAL,
            RecallMatches.MANUFACTURED) + CONCERNED + """
            ) concerned
            where id > coalesce(:after::uuid, '00000000-0000-0000-0000-000000000000')
              and outcome = coalesce(:outcome::text, outcome)
            order by id limit :most""";

    private final JdbcClient jdbc;

    RecallReport(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public RecallCounts counts(UUID recall) {
        return jdbc.sql("""
                select count(*) filter (where m.matches) as matched, count(h.id) as held,
                    count(h.id) filter (where l.hold_id is null) as standing,
                    count(*) filter (where (m.matches or h.id is not null) and exists (
                        select from filed_hold o where o.container_id = c.id and o.recall_id is distinct from r.id
                          and not exists (select from lift_in_force ol where ol.hold_id = o.id))) as already_held,
                    count(*) filter (where m.matches is null and h.id is null) as not_compared
                """ + CONCERNED).param("recall", recall).query(RecallCounts.class).single();
    }

    /** By id; of one outcome, or all. */
    public List<RecalledContainer> containers(UUID recall, RecalledContainer.@Nullable Outcome outcome,
            @Nullable UUID after, PageSize size) {
        return jdbc.sql(LIST).param("recall", recall).param("outcome", outcome == null ? null : outcome.name())
                .param("after", after).param("most", size.limit()).query(RecallRows::container).list();
    }
}
