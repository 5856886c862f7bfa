package org.collarbook.compliance.declarations;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.declarations.DeclarationAnswer.DeclarationCounts;
import org.collarbook.compliance.declarations.DeclarationAnswer.FactCounts;
import org.collarbook.compliance.declarations.PreviewDeclaration.Contradiction;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Accounts for every container of a declaration's group. */
@Component
class DeclarationReport {

    private final JdbcClient jdbc;

    DeclarationReport(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    DeclarationCounts counts(UUID declaration) {
        return jdbc.sql("""
                select count(*) as containers, count(o.container_id) as done,
                    count(*) filter (where o.filled <> '{}') as filled,
                    count(*) filter (where o.known <> '{}') as known,
                    count(*) filter (where o.contradicting <> '{}') as contradicting,
                    count(*) filter (where o.filled = '{}' and o.known = '{}' and o.contradicting = '{}') as untouched,
                    count(*) filter (where m.declaration_id = any (c.declared_in)) as resting
                from declaration_member m join container c on c.id = m.container_id
                left join declaration_outcome o on o.declaration_id = m.declaration_id
                  and o.container_id = m.container_id
                where m.declaration_id = ?""").param(declaration).query(DeclarationCounts.class).single();
    }

    List<FactCounts> facts(UUID declaration) {
        return jdbc.sql("""
                select fact, count(*) filter (where told = 'filled') as filled,
                    count(*) filter (where told = 'known') as known,
                    count(*) filter (where told = 'contradicting') as contradicting
                from declaration_outcome o cross join lateral (
                    select unnest(o.filled) as fact, 'filled' as told
                    union all select unnest(o.known), 'known'
                    union all select unnest(o.contradicting), 'contradicting') one
                where o.declaration_id = ? group by fact order by fact""").param(declaration)
                .query(FactCounts.class).list();
    }

    List<Contradiction> contradictions(UUID declaration, @Nullable UUID after, PageSize size) {
        return jdbc.sql("""
                select container_id, contradicting from declaration_outcome
                where declaration_id = ? and contradicting <> '{}' and container_id > ?
                order by container_id limit ?""")
                .params(declaration, after == null ? ApplyDeclaration.FIRST : after, size.limit())
                .query((row, number) -> new Contradiction(row.getObject(1, UUID.class),
                        Arrays.asList((String[]) row.getArray(2).getArray())))
                .list();
    }
}
