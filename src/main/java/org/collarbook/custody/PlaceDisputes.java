package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.PlaceClaim;
import org.collarbook.registry.PlaceClaims;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Containers that several places claim now. */
@Component
public class PlaceDisputes implements PlaceClaims {

    /** The recorded place first; each row a claim. */
    private static final String CLAIMS = """
            select k.container_id, k.recorded, k.since, s.id, s.code, s.name, s.address, c.specification, c.maker,
                c.serial, c.size, c.tag
            from place_claim k join site s on s.id = k.site_id join container c on c.id = k.container_id
            where k.container_id in (%s)
            order by k.container_id, k.recorded desc, k.since, k.site_id""";

    private final JdbcClient jdbc;
    private final Standing standing;
    private final Places places;

    PlaceDisputes(JdbcClient jdbc, Standing standing, Places places) {
        this.jdbc = jdbc;
        this.standing = standing;
        this.places = places;
    }

    @Override
    public Map<UUID, List<PlaceClaim>> of(Collection<UUID> containers) {
        var claims = new LinkedHashMap<UUID, List<PlaceClaim>>();
        read(jdbc.sql(CLAIMS.formatted("select unnest(cast(:asked as uuid[]))")).param("asked",
                containers.toArray(UUID[]::new))).forEach(one -> claims.put(one.containerId(), one.claims()));
        return claims;
    }

    /** Those that one of the sites claims, recorded there or not; by id. */
    public List<DisputedPlace> claimedBy(Collection<UUID> sites) {
        return read(jdbc.sql(CLAIMS.formatted("select container_id from place_claim where site_id = any (:asked)"))
                .param("asked", sites.toArray(UUID[]::new)));
    }

    /** By pages, all or those that the site claims. */
    public Page<DisputedPlace> page(@Nullable UUID site, @Nullable UUID after, PageSize size) {
        var read = read(jdbc.sql(CLAIMS.formatted("""
                select distinct container_id from place_claim
                where container_id > coalesce(cast(:after as uuid), '00000000-0000-0000-0000-000000000000')
                  and (cast(:site as uuid) is null or site_id = :site)
                order by container_id limit :most""")).param("after", after).param("site", site)
                .param("most", size.limit()));
        return Page.of(read, size, one -> Cursor.after(one.containerId()));
    }

    /** Whether places of different jurisdictions claimed it at that moment: whose rules are to be asked, nobody knows. */
    public boolean isAcrossBorders(UUID container, Instant at) {
        var now = standing.now(container);
        var claiming = new ArrayList<>(standing.claimedAt(now, container, at));
        if (claiming.isEmpty()) {
            return false;
        }
        standing.at(now, container, at).map(Standing.Stood::site).ifPresent(claiming::add);
        return places.sites(claiming).stream().map(Place::jurisdiction).distinct().count() > 1;
    }

    private static List<DisputedPlace> read(JdbcClient.StatementSpec asked) {
        var disputes = new LinkedHashMap<UUID, DisputedPlace>();
        asked.query(PlaceDisputes::claim).list().forEach(one -> disputes.merge(one.containerId(), one,
                PlaceDisputes::together));
        return List.copyOf(disputes.values());
    }

    private static DisputedPlace claim(ResultSet row, int number) throws SQLException {
        var site = new PlaceClaim.ClaimingSite(row.getObject("id", UUID.class), row.getString("code"),
                row.getString("name"), row.getString("address"));
        return new DisputedPlace(row.getObject("container_id", UUID.class), row.getString("specification"),
                row.getString("maker"), row.getString("serial"), row.getString("size"), row.getString("tag"),
                List.of(new PlaceClaim(site, row.getBoolean("recorded"),
                        StoredMoment.of(row, "since"))));
    }

    private static DisputedPlace together(DisputedPlace one, DisputedPlace more) {
        var claims = new ArrayList<>(one.claims());
        claims.addAll(more.claims());
        return new DisputedPlace(one.containerId(), one.specification(), one.maker(), one.serial(), one.size(),
                one.tag(), claims);
    }
}
