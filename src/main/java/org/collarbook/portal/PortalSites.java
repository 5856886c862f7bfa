package org.collarbook.portal;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.PortalSession;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Reads a customer's sites, as the portal: one statement for the page, one that counts what stands there. */
@Component
class PortalSites {

    private static final String COUNT = """
            select s.id, status_word(k.standing, k.due, k.filled_in_time, k.changes_on, k.changes_to,
                (cast(:now as timestamptz) at time zone s.zone)::date) as word, count(*) as containers
            from clock k join site s on s.id = k.site_id
            where k.decisive and k.site_id = any (:sites) group by 1, 2""";

    private final PortalSession session;
    private final JdbcClient jdbc;
    private final Clock clock;

    PortalSites(PortalSession session, JdbcClient jdbc, Clock clock) {
        this.session = session;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private record Row(UUID id, String code, String name, String zone) {}

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public List<PortalSite> page(CustomerScope scope, CustomerId customer, @Nullable UUID after, PageSize size) {
        session.confine(scope, customer);
        return counted(jdbc.sql("select id, code, name, zone from site where id > ? order by id limit ?")
                .params(after == null ? new UUID(0, 0) : after, size.limit()).query(Row.class).list());
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public PortalSite one(CustomerScope scope, CustomerId customer, UUID id) {
        session.confine(scope, customer);
        return counted(jdbc.sql("select id, code, name, zone from site where id = ?").param(id).query(Row.class).list())
                .stream().findFirst().orElseThrow(() -> Problem.notFound("site").asException());
    }

    private List<PortalSite> counted(List<Row> rows) {
        var counts = new HashMap<UUID, Map<Status, Long>>();
        jdbc.sql(COUNT).param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("sites", rows.stream().map(Row::id).toArray(UUID[]::new)).query(row -> {
                    counts.computeIfAbsent(row.getObject("id", UUID.class), one -> new EnumMap<>(Status.class))
                            .put(Status.valueOf(row.getString("word")), row.getLong("containers"));
                });
        var sites = new ArrayList<PortalSite>(rows.size());
        for (var row : rows) {
            sites.add(PortalSite.of(row.id, row.code, row.name, row.zone, counts.getOrDefault(row.id, Map.of())));
        }
        return sites;
    }
}
