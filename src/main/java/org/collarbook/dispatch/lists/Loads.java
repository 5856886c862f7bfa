package org.collarbook.dispatch.lists;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.collarbook.custody.Place;
import org.collarbook.dispatch.lists.PullList.SizeTotal;
import org.collarbook.registry.Size;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** How many of each size to load, whether the depot has as many that last, and whether the vehicle takes them. */
@Component
class Loads {

    /** Reasons that refuse no fill. With any other on record a cylinder is not counted as one that can go out. */
    private static final String HARMLESS = "'{RULE_OFF,CURRENT_TEXT_NOT_READ,READINGS_DIFFER,EARLY_PROOF_TEST,"
            + "EXTENSION_IGNORED,FILLED_WHILE_OVERDUE}'::text[]";

    private static final String SELECT = """
            with fit as (
                select c.size, count(*) as cylinders from requirement r join container c on c.id = r.container_id
                where r.site_id = :depot and r.decisive and c.kind = 'CYLINDER' and r.reasons <@ %s and %s and %s
                  -- where it is nobody knows until it is looked for
                  and not exists (select from place_claim k where k.container_id = c.id)
                group by c.size)
            select wanted.size, rack.places, coalesce(fit.cylinders, 0) as in_date
            from unnest(:sizes::text[]) as wanted (size) left join fit on fit.size = wanted.size
            left join rack on rack.vehicle_id = :vehicle::uuid and rack.size = wanted.size
            """.formatted(HARMLESS, good(":today"), good(":lasting"));

    private final JdbcClient jdbc;
    private final Clock clock;

    Loads(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private record AtDepot(String size, @Nullable Integer places, long inDate) {}

    /** A last day that is the day itself still counts: the status is told for that day. */
    private static String good(String day) {
        return "container_status(r.standing, r.due, r.filled_in_time, r.changes_on, r.changes_to, " + day
                + ") in ('IN_DATE', 'DUE_THIS_MONTH', 'NOT_REQUIRED')";
    }

    List<SizeTotal> of(Round round, Map<String, Long> load) {
        var depot = round.depot();
        Map<String, AtDepot> known = depot == null ? Map.of() : at(depot, round, load);
        return load.entrySet().stream().sorted(Map.Entry.comparingByKey(Size.BY_AMOUNT))
                .map(size -> total(size.getKey(), size.getValue(), known.get(size.getKey()))).toList();
    }

    private Map<String, AtDepot> at(Place depot, Round round, Map<String, Long> load) {
        var today = LocalDate.now(clock.withZone(depot.zone()));
        var known = new HashMap<String, AtDepot>();
        jdbc.sql(SELECT).param("depot", depot.siteId()).param("vehicle", round.vehicle())
                .param("sizes", load.keySet().toArray(String[]::new)).param("today", today)
                .param("lasting", round.lasting(today)).query(AtDepot.class).list()
                .forEach(size -> known.put(size.size, size));
        return known;
    }

    private static SizeTotal total(String size, long load, @Nullable AtDepot known) {
        if (known == null || size.equals(Size.UNKNOWN.word())) {
            return new SizeTotal(size, load, null, null, null, null);
        }
        var places = known.places;
        return new SizeTotal(size, load, known.inDate, Math.max(0, load - known.inDate), places,
                places == null ? null : Math.max(0, load - places));
    }
}
