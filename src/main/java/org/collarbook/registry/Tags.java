package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers.Act;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The tags that containers bear and bore: a tag that was taken off is free for another, and remembered. */
@Component
public class Tags {

    private static final int MOST_BEARERS = 20;

    private final Containers containers;
    private final CorrectionRows rows;
    private final JdbcClient jdbc;

    Tags(Containers containers, CorrectionRows rows, JdbcClient jdbc) {
        this.containers = containers;
        this.rows = rows;
        this.jdbc = jdbc;
    }

    /** Null takes the tag off. */
    @Transactional
    public Correction tag(UUID container, @Nullable String ifMatch, @Nullable Tag tag, String reason, Caller by) {
        var changed = containers.change(container, ifMatch, before -> new NewContainer(before.marks(),
                before.particulars(), tag, before.declaration(), before.declared(), before.further()),
                new Act(reason, null), by);
        return rows.find(changed.act()).orElseThrow();
    }

    /** A container that bore a tag until it was taken off. */
    public record Former(UUID container, Instant until, String reason) {

        public String movedSince(Tag tag) {
            return "Container " + container + " bore the tag " + tag.value() + " until " + until + ", after this"
                    + " happened. Nothing was stored: name the container by its id or its serial number.";
        }
    }

    /** Who bore the tag once, the latest first; at most twenty. */
    public List<Former> formerly(Tag tag) {
        return jdbc.sql("""
                select container_id, recorded_at, reason from mark_correction where field = 'tag' and was = ?
                order by recorded_at desc, id desc limit ?""").params(tag.value(), MOST_BEARERS).query(Tags::former)
                .list();
    }

    /** When each was last taken off a container; of those that ever were. */
    public Map<Tag, Former> lastTakenOff(Collection<Tag> tags) {
        var last = new HashMap<Tag, Former>();
        jdbc.sql("""
                select distinct on (was) container_id, recorded_at, reason, was from mark_correction
                where field = 'tag' and was = any (?) order by was, recorded_at desc, id desc""")
                .param(tags.stream().map(Tag::value).toArray(String[]::new))
                .query(row -> {
                    last.put(new Tag(row.getString(4)), former(row, 0));
                });
        return last;
    }

    /** Refuses by problem what happened while another container bore the tag: nobody knows which one was scanned. */
    public void refuseMovedSince(Tag tag, Instant at) {
        var former = lastTakenOff(List.of(tag)).get(tag);
        if (former != null && former.until().isAfter(at)) {
            throw Problem.conflict("TAG_MOVED_SINCE", former.movedSince(tag)).with("formerly", former.container())
                    .asException();
        }
    }

    /** A tag that a container bore until it was taken off. */
    public record Borne(String tag, Instant until, String reason) {}

    /** The tags that a container bore, the latest first; at most twenty. */
    public List<Borne> borneBy(UUID container) {
        return jdbc.sql("""
                select was, recorded_at, reason from mark_correction
                where container_id = ? and field = 'tag' and was is not null
                order by recorded_at desc, id desc limit ?""").params(container, MOST_BEARERS)
                .query((row, number) -> new Borne(row.getString(1),
                        row.getObject(2, OffsetDateTime.class).toInstant(), row.getString(3)))
                .list();
    }

    private static Former former(ResultSet row, int number) throws SQLException {
        return new Former(row.getObject(1, UUID.class), row.getObject(2, OffsetDateTime.class).toInstant(),
                row.getString(3));
    }

    /** A look-up by a tag that no container bears now, with those that bore it. */
    public Problem notBorne(Tag tag, List<Former> formerly) {
        var last = formerly.getFirst();
        return new Problem(Problem.notFound("container").status(), "FORMER_TAG",
                "Do not fill by this tag: no container bears this tag now."
                        + " Container " + last.container() + " bore it until " + last.until() + " (" + last.reason()
                        + "). Read the collar to see which one this is.",
                List.of(), Map.of("tag", tag.value(),
                        "formerly", formerly));
    }
}
