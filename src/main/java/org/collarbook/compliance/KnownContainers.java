package org.collarbook.compliance;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.registry.ContainerRows;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Reads containers with all their facts in one statement, one container or thousands: a fill check waits for a single
 * answer of the database, and a walk over the register for one a batch.
 */
@Component
public class KnownContainers {

    private static final String WHO_AND_WHERE = "select " + ContainerRows.COLUMNS + """
            , d.declared_by, d.declared_on, p.site_id, s.code as site_code, s.name as site_name, s.zone, s.customer_id,
            """;

    private static final String FROM = """
            from container c
            left join declaration d on d.id = c.declaration_id
            left join placement p on p.container_id = c.id
            left join site s on s.id = p.site_id
            """;

    /** Written for {@link Dated}. */
    private static final String TESTS = """
            array(select concat_ws(',', q.month, coalesce(q.method, ''), q.star, q.plus, coalesce(q.rin, ''),
                      q.rin_seen, q.result, coalesce(q.performed_on::text, ''))
                  from %1$srequalification q where q.container_id = c.id
            """;

    /** A passed test told in part gives way to a record of the same month that tells its method or its RIN. */
    private static final String TOLD_IN_PART = """
                    and not (q.result = 'PASSED' and (q.method is null or q.rin is null) and exists (
                      select from %1$srequalification told
                      where told.container_id = c.id and told.month = q.month and told.result = 'PASSED'
                        and (q.method is null and told.method is not null
                          or q.method = told.method and q.rin is null and told.rin is not null)%2$s))
                  -- of one month in an order that does not hang on when or where they were stored
                  order by q.month, q.performed_on nulls first, q.method nulls first, q.rin nulls first) as history
            """;

    private static final String LAST_FILL = "(select max(f.filled_on) from %1$sfill f where f.container_id = c.id) as filled_on, ";

    /** Facts as each counts, whatever acts have filed it under another record. */
    static final String SELECT = (WHO_AND_WHERE + LAST_FILL + """
            case when c.declared_in is null then '{}' else array(
                  select concat_ws(',', o.id, o.declared_on, o.declared_by) from declaration o
                  where o.id = any (c.declared_in) and o.id is distinct from c.declaration_id
                  order by o.id) end as further_declared,
            claimed.place_disputed,
            -- whose rules are to be asked of what several places claim is not known where they differ
            case when claimed.abroad is not true
              then coalesce(s.jurisdiction, d.jurisdiction, c.declared_jurisdiction) end as governed_by,
            -- a fill later on the day that it was empty ends that; one on a later day the rules see by its date
            (select max(e.emptied_on) from %1$semptying e where e.container_id = c.id and not exists (
               select from %1$sfill f where f.container_id = c.id and f.filled_on = e.emptied_on
                 and f.filled_at > e.emptied_at)) as emptied_on,
            array(select h.reason || ',' || (h.occurred_at at time zone coalesce(s.zone, 'UTC'))::date
                  from %1$shold h where h.container_id = c.id
                    and not exists (select from lift_in_force l where l.hold_id = h.id)
                  order by h.occurred_at, h.id) as holds,
            array(select concat_ws(',', t.kind, coalesce(t.manufactured::text, ''), t.fitted_on,
                      coalesce(r.removed_on::text, ''), coalesce(r.for_good, false), coalesce(t.labelled_for, ''))
                  from %1$spart t left join part_removal r on r.part_id = t.id where t.container_id = c.id
                  order by t.fitted_on, t.id) as parts,
            array(select concat_ws(',', o.since, coalesce(b.returned_on::text, ''), o.reason)
                  from %1$sout_of_service o left join return_to_service b on b.out_of_service_id = o.id
                  where o.container_id = c.id order by o.since) as stops,
            """ + TESTS + """
                    -- a record that was corrected counts no more
                    and not exists (select from requalification_correction k where k.corrects = q.id)
            """ + TOLD_IN_PART + FROM + """
            cross join lateral (
              select count(*) > 0 as place_disputed, bool_or(k.jurisdiction <> s.jurisdiction) as abroad
              from claimed_place k where k.container_id = c.id) claimed
            """).formatted("filed_", """

                        and not exists (select from requalification_correction k where k.corrects = told.id)""");

    /**
     * The same of a container of which nothing is recorded but marks, particulars, place, tests and fills, as of most;
     * {@code more} tells whether that is so (the table keeps itself, by triggers).
     */
    static final String PLAIN = (WHO_AND_WHERE + LAST_FILL + """
            array[]::text[] as further_declared, false as place_disputed,
            coalesce(s.jurisdiction, d.jurisdiction, c.declared_jurisdiction) as governed_by,
            null::date as emptied_on, array[]::text[] as holds, array[]::text[] as parts, array[]::text[] as stops,
            c.declared_in is not null
              or exists (select from more_recorded m where m.container_id = c.id) as more,
            """ + TESTS + TOLD_IN_PART + FROM).formatted("", "");

    /** A record that was merged into another is closed: it answers for nothing, and is looked up as the other. */
    static final String OPEN = "not exists (select from absorbed a where a.container_id = c.id)";
    private static final String COUNTS_FOR = "select coalesce(a.into_id, o.id) from container o"
            + " left join absorbed a on a.container_id = o.id where ";

    private final JdbcClient jdbc;

    KnownContainers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Optional<KnownContainer> byId(UUID id) {
        return read("where c.id = ? and " + OPEN, id).stream().findFirst();
    }

    /** Those of the ids that are known, in the order of their ids. */
    public List<KnownContainer> byIds(Collection<UUID> ids) {
        return read("where c.id = any (?) and " + OPEN + " order by c.id", (Object) ids.toArray(UUID[]::new));
    }

    public Optional<KnownContainer> byTag(Tag tag) {
        return read("where c.tag = ? and " + OPEN, tag.value()).stream().findFirst()
                // borne by a record that was merged into another
                .or(() -> read("where c.id in (" + COUNTS_FOR + "o.tag = ?)", tag.value()).stream().findFirst());
    }

    /** All with this serial number, of whatever maker; not more than {@code atMost}. */
    public List<KnownContainer> bySerial(Serial serial, @Nullable Specification specification, int atMost) {
        return specification == null
                ? read("where c.id in (" + COUNTS_FOR + "o.serial = ?) order by c.id limit ?", serial.value(),
                        atMost)
                : read("where c.id in (" + COUNTS_FOR + "o.serial = ? and o.specification = ?) order by c.id"
                        + " limit ?", serial.value(),
                        specification.toString(), atMost);
    }

    private List<KnownContainer> read(String condition, Object... parameters) {
        var more = new HashSet<UUID>();
        var known = jdbc.sql(PLAIN + condition).params(parameters).query((row, number) -> {
            var one = KnownContainerRow.read(row, number);
            if (row.getBoolean("more")) {
                more.add(one.id());
            }
            return one;
        }).list();
        return more.isEmpty() ? known : withAll(known, more);
    }

    private List<KnownContainer> withAll(List<KnownContainer> known, Set<UUID> more) {
        var whole = jdbc.sql(SELECT + "where c.id = any (?) and " + OPEN).param(more.toArray(UUID[]::new))
                .query(KnownContainerRow::read).list().stream()
                .collect(Collectors.toMap(KnownContainer::id, Function.identity()));
        return known.stream().map(one -> more.contains(one.id()) ? whole.get(one.id()) : one).filter(Objects::nonNull)
                .toList();
    }
}
