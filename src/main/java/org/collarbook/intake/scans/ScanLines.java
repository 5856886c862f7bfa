package org.collarbook.intake.scans;

import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The batches that were sent, and what became of their lines. */
@Component
class ScanLines {

    private static final String SHOWN = """
            from scan_line l where batch_id = :batch and not (outcome = 'REFUSED' and exists (
                select from scan_line r where r.sender = l.sender and r.line_id = l.line_id and r.outcome <> 'REFUSED'))
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    ScanLines(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** {@code fresh} when it was never sent before. */
    record Opened(UUID id, boolean fresh) {}

    record Batch(UUID id, String name, Instant receivedAt) {}

    /** A line that recorded something, as it was answered then. */
    record Recorded(String lineId, byte[] content, String outcome, String answer) {}

    /** What became of a line that is to be stored. */
    record Outcome(ReadLine line, LineAnswer answer, String text) {}

    record Shown(UUID id, int position, String answer) {}

    Opened open(String name, UUID sender) {
        var id = Ids.next();
        boolean fresh = jdbc.sql("insert into scan_batch (id, sender, name, received_at) values (?, ?, ?, ?)"
                + " on conflict on constraint scan_batch_name do nothing")
                .params(id, sender, name, clock.instant().atOffset(ZoneOffset.UTC)).update() == 1;
        return fresh
                ? new Opened(id, true)
                : new Opened(jdbc.sql("select id from scan_batch where sender = ? and name = ?").params(sender, name)
                        .query(UUID.class).single(), false);
    }

    /** One piece of a sender's lines at a time, until the transaction ends: nothing is recorded twice. */
    void lock(UUID sender) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended(?, 0))").param("scans " + sender).query(String.class)
                .optional();
    }

    Map<String, Recorded> recorded(UUID sender, Collection<ReadLine> lines) {
        return jdbc.sql("select line_id, content, outcome, answer from scan_line"
                + " where sender = ? and line_id = any (?) and outcome <> 'REFUSED'")
                .params(sender, lines.stream().map(ReadLine::id).toArray(String[]::new)).query(Recorded.class).list()
                .stream().collect(Collectors.toMap(Recorded::lineId, Function.identity()));
    }

    /** The same line refused before is not noted again. */
    void store(UUID batch, UUID sender, List<Outcome> outcomes) {
        jdbc.sql("""
                insert into scan_line (id, sender, line_id, batch_id, position, content, outcome, answer, recorded_at)
                select id, :sender, line, :batch, position, decode(content, 'hex'), outcome, answer, :now
                from unnest(:ids::uuid[], :lines::text[], :positions::int[], :contents::text[], :outcomes::text[],
                    :answers::text[]) as l (id, line, position, content, outcome, answer)
                on conflict (sender, line_id, content) where outcome = 'REFUSED' do nothing""")
                .param("sender", sender).param("batch", batch).param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("ids", Stream.generate(Ids::next).limit(outcomes.size()).toArray(UUID[]::new))
                .param("lines", texts(outcomes, one -> String.valueOf(one.line.id())))
                .param("positions", outcomes.stream().map(one -> one.line.position()).toArray(Integer[]::new))
                .param("contents", texts(outcomes, one -> HexFormat.of().formatHex(one.line.content())))
                .param("outcomes", texts(outcomes, one -> one.answer.outcome().name()))
                .param("answers", texts(outcomes, Outcome::text)).update();
    }

    private static String[] texts(List<Outcome> outcomes, Function<Outcome, String> text) {
        return outcomes.stream().map(text).toArray(String[]::new);
    }

    /** By the id that this service gave it, or by the sender's own name for it. */
    Optional<Batch> find(String idOrName, UUID sender) {
        return jdbc.sql("select id, name, received_at from scan_batch where id::text = :id"
                + " or sender = :sender and name = :id order by id::text = :id desc limit 1")
                .param("id", idOrName).param("sender", sender)
                .query((row, number) -> new Batch(row.getObject(1, UUID.class), row.getString(2),
                        row.getObject(3, OffsetDateTime.class).toInstant()))
                .optional();
    }

    Map<String, Long> counts(UUID batch) {
        return jdbc.sql("select outcome, count(*) " + SHOWN + "group by outcome").param("batch", batch)
                .query((row, number) -> Map.entry(row.getString(1), row.getLong(2))).list().stream()
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    /** In the order in which they were sent, from just behind the one given. */
    List<Shown> page(UUID batch, @Nullable Integer position, @Nullable UUID id, PageSize size) {
        return jdbc.sql("select id, position, answer " + SHOWN + """
                and (position, id) > (coalesce(cast(:position as int), -1),
                    coalesce(cast(:id as uuid), '00000000-0000-0000-0000-000000000000'))
                order by position, id limit :most""").param("batch", batch).param("position", position).param("id", id)
                .param("most", size.limit()).query(Shown.class).list();
    }
}
