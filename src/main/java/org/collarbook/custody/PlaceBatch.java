package org.collarbook.custody;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Ids;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Customers, sites and places many rows at a time, each step one statement or two; publishes no events. */
@Component
@Transactional(propagation = Propagation.MANDATORY)
public class PlaceBatch {

    public record CustomerLine(String code, String name) {}

    /** A site as a ledger has it; what is null leaves a site that is known already as it is. */
    public record SiteLine(String code, String name, SiteKind kind, @Nullable UUID customerId,
            @Nullable String address, @Nullable Coordinates coordinates, ZoneId zone, Jurisdiction jurisdiction) {}

    public record Placing(UUID containerId, UUID siteId, Instant occurredAt) {}

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final SiteVersions versions;
    private final Standing standing;
    private final Clock clock;

    PlaceBatch(JdbcClient jdbc, BulkCopy copy, SiteVersions versions, Standing standing, Clock clock) {
        this.versions = versions;
        this.standing = standing;
        this.jdbc = jdbc;
        this.copy = copy;
        this.clock = clock;
    }

    /** Opens customers that are new and renames those whose name has changed; ids by code. Each code once. */
    public Map<String, UUID> upsertCustomers(Collection<CustomerLine> lines) {
        jdbc.sql("""
                insert into customer (id, code, name)
                select * from unnest(?::uuid[], ?::text[], ?::text[])
                on conflict on constraint customer_code do update
                  set name = excluded.name, version = customer.version + 1
                  where customer.name <> excluded.name""")
                .params(ids(lines.size()), texts(lines, CustomerLine::code), texts(lines, CustomerLine::name))
                .update();
        return idsByCode("customer", texts(lines, CustomerLine::code));
    }

    /** The same for sites; zone, jurisdiction and kind of a known site stay as they are. */
    public Map<String, UUID> upsertSites(Collection<SiteLine> lines) {
        jdbc.sql("""
                insert into site (id, code, name, kind, customer_id, address, latitude, longitude, zone, jurisdiction)
                select * from unnest(?::uuid[], ?::text[], ?::text[], ?::text[], ?::uuid[], ?::text[], ?::float8[],
                    ?::float8[], ?::text[], ?::text[])
                on conflict on constraint site_code do update
                  set name = excluded.name, address = coalesce(excluded.address, site.address),
                      latitude = coalesce(excluded.latitude, site.latitude),
                      longitude = coalesce(excluded.longitude, site.longitude), version = site.version + 1
                  where (site.name, site.address, site.latitude, site.longitude) is distinct from
                    (excluded.name, coalesce(excluded.address, site.address),
                     coalesce(excluded.latitude, site.latitude), coalesce(excluded.longitude, site.longitude))""")
                .params(List.of(ids(lines.size()), texts(lines, SiteLine::code), texts(lines, SiteLine::name),
                        texts(lines, line -> line.kind().name()), texts(lines, line -> text(line.customerId())),
                        texts(lines, SiteLine::address),
                        texts(lines, line -> line.coordinates() == null
                                ? null
                                : String.valueOf(line.coordinates().latitude())),
                        texts(lines, line -> line.coordinates() == null
                                ? null
                                : String.valueOf(line.coordinates().longitude())),
                        texts(lines, line -> line.zone().getId()), texts(lines, line -> line.jurisdiction().code())))
                .update();
        versions.keep(lines.stream().map(SiteLine::code).toList());
        return idsByCode("site", texts(lines, SiteLine::code));
    }

    private record Row(UUID id, Placing placing) {}

    /** Records a movement for each and puts the container there, unless a later movement is known. Each container once. */
    public void place(List<Placing> placings, UUID by) {
        var known = standing(placings);
        var doubtful = doubtful(placings);
        var now = clock.instant();
        var fresh = placings.stream().filter(placing -> !known.contains(placing.containerId()))
                .map(placing -> new Row(Ids.next(), placing)).toList();
        copy.into("movement (id, container_id, to_site_id, occurred_at, recorded_at, recorded_by)", fresh,
                row -> new @Nullable Object[]{row.id, row.placing.containerId(), row.placing.siteId(),
                        row.placing.occurredAt(), now, by});
        copy.into("placement (container_id, site_id, movement_id, since)", fresh,
                row -> new @Nullable Object[]{row.placing.containerId(), row.placing.siteId(), row.id,
                        row.placing.occurredAt()});
        move(placings.stream().filter(placing -> known.contains(placing.containerId())).toList(), by);
        if (!doubtful.isEmpty()) {
            standing.settle(doubtful);
        }
    }

    private Set<UUID> standing(List<Placing> placings) {
        return jdbc.sql("select container_id from placement where container_id = any (?)")
                .param(placings.stream().map(Placing::containerId).toArray(UUID[]::new)).query(UUID.class).set();
    }

    /** Of which more than the later movement decides: they were seen, or moved at the very moment. */
    private Set<UUID> doubtful(List<Placing> placings) {
        return jdbc.sql("""
                select g.container from unnest(?::uuid[], ?::timestamptz[]) as g (container, at)
                where exists (select from filed_sighting s where s.container_id = g.container)
                  or exists (select from placement p where p.container_id = g.container and p.since = g.at)
                  or exists (select from place_claim k where k.container_id = g.container)""")
                .params(placings.stream().map(Placing::containerId).toArray(UUID[]::new),
                        texts(placings, placing -> placing.occurredAt().toString()))
                .query(UUID.class).set();
    }

    private void move(List<Placing> placings, UUID by) {
        jdbc.sql("""
                with given as (
                    select * from unnest(?::uuid[], ?::uuid[], ?::uuid[], ?::timestamptz[])
                      as g (id, container, site, at)),
                facts as (
                    insert into movement (id, container_id, from_site_id, to_site_id, occurred_at, recorded_at,
                        recorded_by)
                    select g.id, g.container, p.site_id, g.site, g.at, ?, ?
                    from given g left join placement p on p.container_id = g.container and p.since < g.at
                      -- of several places nobody knows from which it came
                      and not exists (select from place_claim k where k.container_id = g.container))
                update placement p set site_id = g.site, movement_id = g.id, since = g.at
                from given g where p.container_id = g.container and p.since < g.at""")
                .params(ids(placings.size()), placings.stream().map(Placing::containerId).toArray(UUID[]::new),
                        placings.stream().map(Placing::siteId).toArray(UUID[]::new),
                        texts(placings, placing -> placing.occurredAt().toString()),
                        clock.instant().atOffset(ZoneOffset.UTC), by)
                .update();
    }

    private Map<String, UUID> idsByCode(String table, @Nullable String[] codes) {
        var found = new HashMap<String, UUID>();
        jdbc.sql("select code, id from " + table + " where code = any (?)").param(codes).query(row -> {
            found.put(row.getString(1), row.getObject(2, UUID.class));
        });
        return found;
    }

    private static UUID[] ids(int many) {
        var ids = new UUID[many];
        Arrays.setAll(ids, i -> Ids.next());
        return ids;
    }

    private static <T> @Nullable String[] texts(Collection<T> rows, Function<T, @Nullable String> text) {
        return rows.stream().map(text).toArray(String[]::new);
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }
}
