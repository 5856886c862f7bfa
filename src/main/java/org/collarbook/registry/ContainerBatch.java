package org.collarbook.registry;

import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * The register many rows at a time, each step one statement. Publishes no events: whoever writes a batch sees to what
 * must follow from it in the same transaction.
 */
@Component
@Transactional(propagation = Propagation.MANDATORY)
public class ContainerBatch {

    /** A container as it stands and as it is to stand; the version of the first must still be the present one. */
    public record Change(RegisteredContainer before, NewContainer after) {}

    private static final String CONTENT = MarkColumns.NAMES + ", " + ParticularColumns.NAMES
            + ", tag, declaration_id, declared, declared_in, declared_jurisdiction";

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final Corrections corrections;
    private final Absorbed absorbed;
    private final Clock clock;

    ContainerBatch(JdbcClient jdbc, BulkCopy copy, Corrections corrections, Absorbed absorbed, Clock clock) {
        this.jdbc = jdbc;
        this.copy = copy;
        this.corrections = corrections;
        this.absorbed = absorbed;
        this.clock = clock;
    }

    /**
     * Those of the keys that are in the register, with all that is recorded under them; and of those that differ only in
     * that one of the two leaves out its maker or its month, as many as tell that there are some.
     */
    public Map<NaturalKey, RegisteredContainer> alike(Collection<NaturalKey> keys) {
        var found = new HashMap<NaturalKey, RegisteredContainer>();
        jdbc.sql("select " + ContainerRows.COLUMNS + """
                 from unnest(?::text[], ?::text[], ?::text[], ?::text[], ?::date[])
                  as k (scheme, spec, symbol, number, month)
                cross join lateral (select * from container o
                  where o.serial = k.number and o.specification = k.spec and o.mark_scheme = k.scheme
                    and (o.maker = k.symbol or o.maker is null or k.symbol is null)
                    and (o.manufactured = k.month or o.manufactured is null or k.month is null)
                  order by o.maker is not distinct from k.symbol and o.manufactured is not distinct from k.month desc
                  limit 5) c""")
                .params(List.of(
                        texts(keys, key -> key.scheme().name()), texts(keys, key -> key.specification().toString()),
                        texts(keys, key -> key.maker() == null ? null : key.maker().value()),
                        texts(keys, key -> key.serial().value()),
                        texts(keys, key -> key.manufactured() == null ? null : key.manufactured().atDay(1).toString())))
                .query(ContainerRows::read).list()
                .forEach(container -> found.put(container.marks().naturalKey(), container));
        return found;
    }

    /** Closed records among them. */
    public List<RegisteredContainer> byIds(Collection<UUID> ids) {
        return jdbc.sql(ContainerRows.SELECT + "where c.id = any (?) order by c.id").param(ids.toArray(UUID[]::new))
                .query(ContainerRows::read).list();
    }

    public Map<Tag, UUID> tagsInUse(Collection<Tag> tags) {
        var found = new HashMap<Tag, UUID>();
        jdbc.sql("select tag, id from container where tag = any (?)")
                .param(tags.stream().map(Tag::value).toArray(String[]::new))
                .query(row -> {
                    found.put(new Tag(row.getString(1)), row.getObject(2, UUID.class));
                });
        return found;
    }

    /** Of containers looked up before; one that was merged into another meanwhile fails the whole call. */
    public void refuseMerged(Collection<UUID> ids) {
        absorbed.refuseClosedMeanwhile(ids);
    }

    private record Row(UUID id, NewContainer content) {}

    /** The ids given, in the order of the rows. A key or tag that is taken fails the whole call. */
    public List<UUID> insert(List<NewContainer> containers, UUID by) {
        var rows = containers.stream().map(container -> new Row(Ids.next(), container)).toList();
        var at = clock.instant();
        copy.into("container (id, registered_at, registered_by, " + CONTENT + ")", rows,
                row -> values(row.content, row.id, at, by));
        return rows.stream().map(Row::id).toList();
    }

    /** The same as {@link Containers#correct} for each, the earlier values kept with the one reason. */
    public void update(List<Change> changes, String reason, UUID by) {
        if (changes.isEmpty()) {
            return;
        }
        jdbc.sql("create temporary table container_change on commit drop as select id, version, " + CONTENT
                + " from container with no data").update();
        copy.into("container_change (id, version, " + CONTENT + ")", changes,
                change -> values(change.after, change.before.id(), change.before.version()));
        int updated = jdbc.sql("update container c set version = c.version + 1, (" + CONTENT + ") = (select "
                + CONTENT.replaceAll("(\\w+)", "n.$1") + ") from container_change n"
                + " where n.id = c.id and n.version = c.version").update();
        jdbc.sql("drop table container_change").update();
        if (updated != changes.size()) {
            throw new OptimisticLockingFailureException(
                    changes.size() - updated + " containers were changed by somebody else meanwhile");
        }
        corrections.record(changes, reason, by);
    }

    private static @Nullable Object[] values(NewContainer content, @Nullable Object... first) {
        var values = new ArrayList<@Nullable Object>(Arrays.asList(first));
        values.addAll(Arrays.asList(MarkColumns.of(content.marks()).values()));
        values.addAll(Arrays.asList(ParticularColumns.of(content.particulars()).values()));
        values.add(content.tag() == null ? null : content.tag().value());
        values.add(content.declaration());
        values.add(ContainerRows.words(content.declared()));
        var declarations = ContainerRows.declarations(content);
        values.add(declarations == null
                ? null
                : Arrays.stream(declarations).map(UUID::toString).toArray(String[]::new));
        values.add(ContainerRows.jurisdiction(content));
        return values.toArray();
    }

    private static @Nullable String[] texts(Collection<NaturalKey> keys,
            Function<NaturalKey, @Nullable String> part) {
        return keys.stream().map(part).toArray(String[]::new);
    }
}
