package org.collarbook.portal.notices;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.BulkCopy;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.databind.json.JsonMapper;

/** Writes notices for the subscriptions that asked for them, on the transaction of what they tell. */
@Component
class WriteNotices {

    /** Who is told what. */
    record Asking(UUID id, UUID customer, Set<NoticeKind> kinds) {

        boolean asksFor(NoticeType type) {
            return type.kind() != null && kinds.contains(type.kind());
        }
    }

    /** A notice for one subscription. */
    record Written(UUID subscription, @Nullable UUID container, NoticeBody body) {}

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final JsonMapper json;
    private final Clock clock;

    WriteNotices(JdbcClient jdbc, BulkCopy copy, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.copy = copy;
        this.json = json;
        this.clock = clock;
    }

    /** The subscriptions that notices are written for, by customer. */
    Map<UUID, List<Asking>> asking(Collection<UUID> customers) {
        return jdbc.sql("""
                select id, customer_id, kinds from notice_subscription
                where customer_id = any (?) and status in ('ACTIVE', 'PAUSED') order by id""")
                .param(customers.toArray(UUID[]::new))
                .query((row, number) -> new Asking(row.getObject("id", UUID.class),
                        row.getObject("customer_id", UUID.class), kinds((String[]) row.getArray("kinds").getArray())))
                .list().stream().collect(Collectors.groupingBy(Asking::customer));
    }

    static Set<NoticeKind> kinds(String[] words) {
        return Arrays.stream(words).map(NoticeKind::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(NoticeKind.class)));
    }

    /** A customer's own sites, as they were called while they were that customer's. */
    Map<UUID, NoticeBody.Where> sites(Collection<UUID> ids, UUID customer) {
        return jdbc.sql("""
                select distinct on (site_id) site_id, code, name from site_version
                where site_id = any (?) and customer_id = ? order by site_id, version desc""")
                .params(ids.toArray(UUID[]::new), customer)
                .query((row, number) -> new NoticeBody.Where(row.getObject("site_id", UUID.class),
                        row.getString("code"), row.getString("name")))
                .list().stream().collect(Collectors.toMap(NoticeBody.Where::id, site -> site));
    }

    void write(List<Written> notices) {
        if (notices.isEmpty()) {
            return;
        }
        var now = OffsetDateTime.ofInstant(clock.instant(), ZoneOffset.UTC);
        var rows = new ArrayList<@Nullable Object[]>(notices.size());
        for (var notice : notices) {
            var body = notice.body();
            rows.add(new @Nullable Object[]{body.id(), notice.subscription(), notice.container(), body.type(),
                    json.writeValueAsString(body), body.occurredAt().atOffset(ZoneOffset.UTC), now});
        }
        copy.into("notice (id, subscription_id, container_id, type, body, occurred_at, next_attempt_at)", rows,
                row -> row);
    }
}
