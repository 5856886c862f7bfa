package org.collarbook.compliance.transport;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.LoadedRuleBook;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Journal;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Move;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Retention;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Judges a move of a stationary tank while it is locked, and records it with its inspection, 49 CFR 173.315(j). */
@Component
class Transports {

    private static final String SELECT = "select * from filed_transport_record ";

    private final Containers containers;
    private final KnownContainers known;
    private final RuleBook rules;
    private final LoadedRuleBook loaded;
    private final Retention retention;
    private final Journal journal;
    private final JdbcClient jdbc;
    private final Clock clock;

    Transports(Containers containers, KnownContainers known, RuleBook rules, LoadedRuleBook loaded,
            Retention retention, Journal journal, JdbcClient jdbc, Clock clock) {
        this.containers = containers;
        this.known = known;
        this.rules = rules;
        this.loaded = loaded;
        this.retention = retention;
        this.journal = journal;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem a move that must not be, unless it is told as a fact. */
    @Transactional
    Transport record(UUID container, Transport.Told told, Caller by) {
        containers.lockKnown(container);
        var facts = known.byId(container).orElseThrow().facts();
        if (facts.kind() != ContainerKind.STATIONARY_TANK) {
            throw Problem.conflict("NOT_FOR_THIS_KIND", "49 CFR 173.315(j) is for stationary tanks; this is a "
                    + facts.kind() + ", whose moves are movements. Nothing was stored.").asException();
        }
        var refusals = refusals(facts, told);
        if (!refusals.isEmpty() && !told.happened()) {
            throw Problem.conflict("MOVE_REFUSED", "This tank must not be moved so. Nothing was stored; see reasons. If"
                    + " it was moved, record that it happened.").with("reasons", refusals).asException();
        }
        var id = append(container, told, refusals.stream().map(reason -> reason.code().name()).distinct().toList(),
                by);
        journal.enter(List.of(container));
        return jdbc.sql(SELECT + "where id = ?").param(id).query(Transports::read).single();
    }

    private List<Reason> refusals(Facts facts, Transport.Told told) {
        var standing = facts.holds();
        if (standing != null && !told.happened()) {
            // a hold that stands refuses a move however early it is said to have been
            standing = standing.stream().map(hold -> new StandingHold(hold.reason(), null, hold.text(),
                    hold.citation())).toList();
        }
        var asked = facts.toBuilder().holds(standing).move(new Move(told.percentFull(), told.purpose())).build();
        var assessment = rules.assess(asked, told.movedOn());
        boolean empty = told.percentFull().signum() == 0 && assessment.mayCarryEmpty().allowed();
        var refusals = new ArrayList<>(empty ? List.<Reason>of() : assessment.mayCarry().reasons());
        if (!told.leakFree()) {
            refusals.add(ReasonCode.LEAK_FOUND.reason());
        }
        return refusals;
    }

    private UUID append(UUID container, Transport.Told told, List<String> refusedFor, Caller by) {
        var id = Ids.next();
        int stored = jdbc.sql("""
                insert into transport_record (id, container_id, moved_on, percent_full, purpose, from_place, to_place,
                    carrier, inspected_on, inspected_by, leak_free, secured, findings, refused_for, rule_book_id,
                    keep_until, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                on conflict on constraint transport_record_once do nothing""")
                .params(id, container, told.movedOn(), told.percentFull(), told.purpose().name(), told.from(),
                        told.to(), told.carrier(), told.inspectedOn(), told.inspectedBy(), told.leakFree(),
                        told.secured(), told.findings(), refusedFor.toArray(String[]::new), loaded.id(),
                        retention.keepUntil(Retention.RecordKind.TRANSPORT, told.movedOn()),
                        clock.instant().atOffset(ZoneOffset.UTC), by.id())
                .update();
        if (stored == 0) {
            throw Problem.conflict("ALREADY_RECORDED", "A move of this tank on " + told.movedOn()
                    + " between these places is recorded already. Nothing was stored.").asException();
        }
        return id;
    }

    /** The latest recorded first. */
    List<Transport> of(UUID container, @Nullable UUID before, PageSize size) {
        return jdbc.sql(SELECT + """
                where container_id = :container
                  and id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by id desc limit :most""").param("container", container).param("before", before)
                .param("most", size.limit()).query(Transports::read).list();
    }

    static Transport read(ResultSet row, int number) throws SQLException {
        var refusedFor = List.of((String[]) row.getArray("refused_for").getArray());
        return new Transport(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                new Transport.Told(row.getObject("moved_on", LocalDate.class), row.getBigDecimal("percent_full"),
                        Purpose.valueOf(row.getString("purpose")), row.getString("from_place"),
                        row.getString("to_place"), row.getString("carrier"),
                        row.getObject("inspected_on", LocalDate.class), row.getString("inspected_by"),
                        row.getBoolean("leak_free"), row.getBoolean("secured"), row.getString("findings"), true),
                refusedFor, row.getObject("keep_until", LocalDate.class),
                StoredMoment.of(row, "recorded_at"));
    }
}
