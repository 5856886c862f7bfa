package org.collarbook.dispatch.lists;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads what has no place, in the order of the index that is kept of it. */
@Component
class PlaceUnknownRows {

    private static final Set<String> WITHOUT_A_DAY = Set.of("-infinity", "infinity");
    private static final String PART = """
            select 0 as call, %1$s as undetermined, case when %1$s then r.reasons end as reasons,
                null::date as planned, null::int as plan, false as missed, o.out_from,\s"""
            + PullRows.COLUMNS + """

            from requirement r join container c on c.id = r.container_id
            cross join lateral (select out_from(r.standing, r.due, r.changes_on, r.changes_to) as out_from) o"""
            + PullRows.words(":today", ":before") + """

            where r.site_id is null and (o.out_from, r.container_id) > (:after::date, :id) and %2$s
            order by o.out_from, r.container_id limit :limit""";
    private static final String LISTED = """
            o.out_from <= :before
              -- where one authority's answer is not known, what another's says is overdue is overdue all the same
              and (r.decisive or r.standing = 'DUE'
                and exists (select from requirement worst where worst.container_id = r.container_id
                    and worst.decisive and worst.standing in ('UNDETERMINED', 'OTHER_AUTHORITY'))
                and not exists (select from requirement sooner where sooner.container_id = r.container_id
                    and not sooner.decisive and sooner.standing = 'DUE' and (sooner.due, sooner.requirement,
                    sooner.jurisdiction) < (r.due, r.requirement, r.jurisdiction)))
              and (w.leaves or w.status not in ('UNDETERMINED', 'OTHER_AUTHORITY', 'NOT_REQUIRED'))""";
    /** Each part is a range of the index of what has no place, read no further than the page needs. */
    static final String SELECT = "select * from ((" + PART.formatted("false", LISTED) + ") union all ("
            + PART.formatted("true", "r.decisive and o.out_from = 'infinity'") + ")) found"
            + " order by out_from, id limit :limit";

    private final JdbcClient jdbc;
    private final Clock clock;

    PlaceUnknownRows(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** With the day from which it is out, as text. */
    record Found(PullRow row, String outFrom) {}

    /** Where the place is not known, days are told in UTC. */
    LocalDate today() {
        return LocalDate.now(clock.withZone(ZoneOffset.UTC));
    }

    List<Found> before(LocalDate before, LocalDate today, @Nullable String cursor, PageSize size) {
        var after = after(cursor);
        return jdbc.sql(SELECT).param("before", before).param("today", today).param("after", after.key().getFirst())
                .param("id", UUID.fromString(after.key().getLast())).param("limit", size.limit())
                .query((row, number) -> new Found(PullRow.read(row, number), row.getString("out_from"))).list();
    }

    private static Cursor after(@Nullable String text) {
        var cursor = Cursor.parse(text, 2);
        if (cursor == null) {
            return Cursor.after("-infinity", new UUID(0, 0));
        }
        try {
            UUID.fromString(cursor.key().getLast());
            return WITHOUT_A_DAY.contains(cursor.key().getFirst())
                    ? cursor
                    : Cursor.after(WrittenTime.day(cursor.key().getFirst()), cursor.key().getLast());
        } catch (DateTimeException | IllegalArgumentException forged) {
            throw Cursor.refused(String.valueOf(text));
        }
    }
}
