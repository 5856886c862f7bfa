package org.collarbook.custody;

import java.time.Clock;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Customers and sites, and which container stands where. */
@Component
public class Places {

    private final Customers customers;
    private final Sites sites;
    private final SiteVersions versions;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Places(Customers customers, Sites sites, SiteVersions versions, JdbcClient jdbc,
            ApplicationEventPublisher events, Clock clock) {
        this.customers = customers;
        this.versions = versions;
        this.sites = sites;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    @Transactional
    public NamedCustomer openCustomer(String code, String name) {
        return save(Customer.open(code, name, clock.instant()), code);
    }

    @Transactional
    public NamedCustomer changeCustomer(UUID id, @Nullable String ifMatch, String code, String name) {
        var customer = customers.findById(id).orElseThrow(() -> Problem.notFound("customer").asException());
        new Revision(customer.named().version()).requireMatch(ifMatch);
        customer.rename(code, name);
        return save(customer, code);
    }

    @Transactional
    public Place openSite(SiteContent content) {
        return save(Site.open(content, clock.instant()), content.code());
    }

    @Transactional
    public Place changeSite(UUID id, @Nullable String ifMatch, SiteContent content) {
        var site = sites.findById(id).orElseThrow(() -> Problem.notFound("site").asException());
        var before = site.place();
        new Revision(before.version()).requireMatch(ifMatch);
        if (content.kind() != before.kind()) {
            refuseOnRoute(id, before.kind());
        }
        site.describe(content);
        var place = save(site, content.code());
        events.publishEvent(new SiteChanged(id));
        return place;
    }

    private NamedCustomer save(Customer customer, String code) {
        try {
            return customers.saveAndFlush(customer).named();
        } catch (DataIntegrityViolationException taken) {
            throw Codes.taken(taken, "customer_code", "customer", code);
        }
    }

    private Place save(Site site, String code) {
        try {
            var place = sites.saveAndFlush(site).place();
            versions.keep(List.of(place.code()));
            return place;
        } catch (DataIntegrityViolationException taken) {
            throw Codes.taken(taken, "site_code", "site", code);
        }
    }

    /** A route that names a site relies on its kind. */
    private void refuseOnRoute(UUID site, SiteKind kind) {
        var routes = jdbc.sql("select code from route where depot_id = :site or vehicle_id = :site or id in ("
                + "select route_id from route_stop where site_id = :site) order by code").param("site", site)
                .query(String.class).list();
        if (!routes.isEmpty()) {
            throw Problem.conflict("SITE_ON_ROUTE", "A route names this site as a " + kind + " (" + String.join(", ",
                    routes) + "): take it off first, then change its kind.").with("routes", routes).asException();
        }
    }

    public Optional<NamedCustomer> customer(UUID id) {
        return jdbc.sql(PlaceRows.CUSTOMERS + "where id = ?").param(id).query(PlaceRows::customer).optional();
    }

    /** By id, in any case, or by code. An id is one thing's alone, whatever others are called. */
    public Optional<NamedPlace> named(NamedPlace.Kind kind, String name) {
        // no text of a database holds this letter
        if (name.indexOf('\0') >= 0) {
            return Optional.empty();
        }
        return jdbc.sql("select id, code, name from " + kind.table + " where (code = :name or id::text = lower(:name))"
                + " and " + kind.condition + " order by id::text = lower(:name) desc limit 1").param("name", name)
                .query(NamedPlace.class).optional();
    }

    public Optional<Place> site(UUID id) {
        return jdbc.sql(PlaceRows.SITES + "where id = ?").param(id).query(PlaceRows::site).optional();
    }

    public List<Place> sites(Collection<UUID> ids) {
        return jdbc.sql(PlaceRows.SITES + "where id = any (?)").param(ids.toArray(UUID[]::new)).query(PlaceRows::site)
                .list();
    }

    /** Where each of the containers stands now; a container that was never moved is not among them. */
    public Map<UUID, Place> of(Collection<UUID> containers) {
        var siteOf = new HashMap<UUID, UUID>();
        jdbc.sql("select container_id, site_id from placement where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(row -> {
                    siteOf.put(row.getObject(1, UUID.class), row.getObject(2, UUID.class));
                });
        var byId = new HashMap<UUID, Place>();
        sites(Map.copyOf(siteOf).values().stream().distinct().toList())
                .forEach(site -> byId.put(site.siteId(), site));
        var places = new HashMap<UUID, Place>();
        siteOf.forEach((container, site) -> places.put(container, byId.get(site)));
        return places;
    }

    /** In which a container's days are told: that of where it stands, UTC while that is not known. */
    public ZoneId zoneOf(UUID container) {
        var place = of(List.of(container)).get(container);
        return place == null ? ZoneOffset.UTC : place.zone();
    }

    /** Those recorded there, and those that it claims besides. */
    public List<UUID> containersAt(UUID site) {
        return jdbc.sql("select container_id from placement where site_id = :site"
                + " union select container_id from place_claim where site_id = :site").param("site", site)
                .query(UUID.class).list();
    }

    public Page<NamedCustomer> customers(@Nullable UUID after, PageSize size) {
        var read = jdbc.sql(PlaceRows.CUSTOMERS + PlaceRows.AFTER).params(after, size.limit())
                .query(PlaceRows::customer).list();
        return Page.of(read, size, customer -> Cursor.after(customer.id()));
    }

    public Page<Place> sites(@Nullable UUID after, @Nullable UUID customer, PageSize size) {
        var read = jdbc.sql(PlaceRows.SITES + """
                where id > coalesce(cast(:after as uuid), '00000000-0000-0000-0000-000000000000')
                  and (cast(:customer as uuid) is null or customer_id = :customer)
                order by id limit :most""").param("after", after).param("customer", customer)
                .param("most", size.limit()).query(PlaceRows::site).list();
        return Page.of(read, size, site -> Cursor.after(site.siteId()));
    }
}
