package org.collarbook.platform;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;

/**
 * The chain of every container's facts. Whoever has recorded facts of containers enters them in the same transaction:
 * what the tables hold and the chain does not is appended in the order in which it was recorded.
 */
@Component
public class Journal {

    private static final String COLUMNS = "container_id, seq, kind, subject_id, occurred_at, recorded_at, recorded_by,"
            + " content, previous_hash, hash";
    private static final Comparator<JournalFact> AS_RECORDED = Comparator.comparing(JournalFact::recordedAt)
            .thenComparing(JournalFact::occurredAt).thenComparing(JournalFact::kind)
            .thenComparing(JournalFact::subject);

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final JsonMapper json;
    private final JournalRows rows;
    private final List<Journalled> sources;
    private final List<String> selects;

    Journal(JdbcClient jdbc, BulkCopy copy, JsonMapper json, JournalRows rows, List<Journalled> sources) {
        this.rows = rows;
        this.selects = sources.stream().flatMap(source -> source.selects().stream()).toList();
        this.jdbc = jdbc;
        this.copy = copy;
        this.json = json;
        this.sources = sources;
    }

    /** Where a page of a history goes on. */
    public record Place(Instant occurredAt, long seq, UUID container) {}

    /** The end of a chain. */
    record Head(UUID containerId, long seq, byte[] hash) {}

    @Transactional(propagation = Propagation.MANDATORY)
    public void enter(Collection<UUID> containers) {
        if (containers.isEmpty()) {
            return;
        }
        var ids = containers.stream().distinct().sorted().toArray(UUID[]::new);
        var heads = lock(ids);
        if (heads.size() < ids.length) {
            // waits for whoever opens the same chain at this moment
            jdbc.sql("insert into journal_head (container_id, seq, hash) select id, 0, ? from unnest(?) as k (id)"
                    + " order by id on conflict do nothing").params(JournalEntry.START, ids).update();
            heads = lock(ids);
        }
        var entered = entered(heads.keySet());
        write(chained(facts(List.of(ids)).stream()
                .filter(fact -> !entered.contains(key(fact.kind(), fact.subject()))).sorted(AS_RECORDED).toList(),
                heads),
                heads);
    }

    /** The same for containers that were registered in this very transaction: nobody else can know of them. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void enterFirst(Collection<UUID> containers) {
        if (!containers.isEmpty()) {
            write(chained(facts(containers).stream().sorted(AS_RECORDED).toList(), Map.of()), Map.of());
        }
    }

    private Map<UUID, Head> lock(UUID[] ids) {
        var heads = new HashMap<UUID, Head>();
        jdbc.sql("select container_id, seq, hash from journal_head where container_id = any (?)"
                + " order by container_id for update").param(ids).query(Head.class).list()
                .forEach(head -> heads.put(head.containerId, head));
        return heads;
    }

    List<JournalFact> facts(Collection<UUID> containers) {
        return rows.read(selects, containers).stream().map(rows::fact).toList();
    }

    static String key(String kind, UUID subject) {
        return kind + subject;
    }

    private Set<String> entered(Collection<UUID> containers) {
        var entered = new HashSet<String>();
        jdbc.sql("select kind, subject_id from journal where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(row -> {
                    entered.add(key(row.getString(1), row.getObject(2, UUID.class)));
                });
        return entered;
    }

    /** Entries, with the ends of the chains that they lengthen. */
    private record Grown(List<JournalEntry> entries, Collection<Head> ends) {}

    private Grown chained(List<JournalFact> facts, Map<UUID, Head> heads) {
        var grown = new HashMap<UUID, Head>();
        var entries = new ArrayList<JournalEntry>(facts.size());
        for (var fact : facts) {
            var id = fact.container();
            var head = grown.getOrDefault(id, heads.getOrDefault(id, new Head(id, 0, JournalEntry.START)));
            var entry = JournalEntry.after(head.hash, head.seq + 1, fact, text(fact));
            entries.add(entry);
            grown.put(id, new Head(id, entry.seq(), entry.hash()));
        }
        return new Grown(entries, grown.values());
    }

    private void write(Grown grown, Map<UUID, Head> heads) {
        copy.into("journal (" + COLUMNS + ")", grown.entries, Journal::values);
        copy.into("journal_head (container_id, seq, hash)",
                grown.ends.stream().filter(head -> !heads.containsKey(head.containerId)).toList(),
                head -> new @Nullable Object[]{head.containerId, head.seq, bytea(head.hash)});
        var longer = grown.ends.stream().filter(head -> heads.containsKey(head.containerId)).toList();
        if (!longer.isEmpty()) {
            jdbc.sql("""
                    update journal_head h set seq = g.seq, hash = g.hash
                    from unnest(?::uuid[], ?::bigint[], ?::bytea[]) as g (container_id, seq, hash)
                    where h.container_id = g.container_id""")
                    .params(longer.stream().map(Head::containerId).toArray(UUID[]::new),
                            longer.stream().map(Head::seq).toArray(Long[]::new),
                            longer.stream().map(head -> bytea(head.hash)).toArray(String[]::new))
                    .update();
        }
    }

    String text(JournalFact fact) {
        return json.writeValueAsString(fact.content());
    }

    private static @Nullable Object[] values(JournalEntry entry) {
        return new @Nullable Object[]{entry.container(), entry.seq(), entry.kind(), entry.subject(),
                entry.occurredAt().atOffset(ZoneOffset.UTC), entry.recordedAt().atOffset(ZoneOffset.UTC),
                entry.recordedBy(), entry.content(), bytea(entry.previousHash()), bytea(entry.hash())};
    }

    private static String bytea(byte[] bytes) {
        return "\\x" + java.util.HexFormat.of().formatHex(bytes);
    }

    /** The entries of these chains, the latest happening first; from just before the place given, when one is. */
    public List<JournalEntry> of(Collection<UUID> containers, @Nullable Place before, int atMost) {
        return jdbc.sql("select " + COLUMNS + " " + """
                from journal where container_id = any (:containers)
                   and (cast(:time as timestamptz) is null
                     or (occurred_at, seq, container_id) < (:time, :seq, cast(:id as uuid)))
                 order by occurred_at desc, seq desc, container_id desc limit :most""")
                .param("containers", containers.toArray(UUID[]::new))
                .param("time", before == null ? null : before.occurredAt().atOffset(ZoneOffset.UTC))
                .param("seq", before == null ? 0 : before.seq()).param("id", before == null ? null : before.container())
                .param("most", atMost).query(Journal::read).list();
    }

    /** The chains of these containers, each from its start. */
    List<JournalEntry> chains(Collection<UUID> containers) {
        return jdbc.sql("select " + COLUMNS + " from journal where container_id = any (?) order by container_id, seq")
                .param(containers.toArray(UUID[]::new)).query(Journal::read).list();
    }

    /** The ends of their chains. */
    List<Head> heads(Collection<UUID> containers) {
        return jdbc.sql("select container_id, seq, hash from journal_head where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(Head.class).list();
    }

    /** The next containers by id that have a chain, or should have one. */
    List<UUID> after(UUID container, int atMost) {
        var chained = jdbc.sql("select container_id from journal_head where container_id > ? order by container_id"
                + " limit ?").params(container, atMost).query(UUID.class).list();
        // as the database sorts them
        return Stream.concat(chained.stream(),
                sources.stream().flatMap(source -> source.containersAfter(container, atMost).stream())).distinct()
                .sorted(Comparator.comparing(UUID::toString)).limit(atMost).toList();
    }

    private static JournalEntry read(ResultSet row, int number) throws SQLException {
        return new JournalEntry(row.getObject("container_id", UUID.class), row.getLong("seq"), row.getString("kind"),
                row.getObject("subject_id", UUID.class), StoredMoment.of(row, "occurred_at"),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class), row.getString("content"), row.getBytes("previous_hash"),
                row.getBytes("hash"));
    }
}
