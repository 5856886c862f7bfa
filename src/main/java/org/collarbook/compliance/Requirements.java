package org.collarbook.compliance;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.Collectors;

import org.collarbook.platform.BulkCopy;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The stored clocks: assessed anew whenever a fact or a rule changes, in the transaction that changed it. */
@Component
public class Requirements {

    private static final String COLUMNS = "container_id, requirement, jurisdiction, decisive, standing, due,"
            + " filled_in_time, changes_on, changes_to, rule, reasons, site_id, customer_id, rule_book_id, assessed_on,"
            + " changed_at";

    /** No two changes of a container carry the same second. */
    private static final String CHANGED_AT = "greatest(:now::timestamptz, requirement.changed_at + interval '1 second')";

    private static final String WRITE = "insert into requirement (" + COLUMNS + ")" + """

            select container_id, requirement, jurisdiction, decisive, standing, due, filled_in_time, changes_on,
                changes_to, rule, string_to_array(reasons, ','), site_id, customer_id, :rule_book, assessed_on,
                :now::timestamptz
            from unnest(:containers::uuid[], :requirements::text[], :jurisdictions::text[], :decisive::boolean[],
                    :standings::text[], :due::date[], :filled::boolean[], :changes_on::date[], :changes_to::text[],
                    :rules::text[], :reasons::text[], :sites::uuid[], :customers::uuid[], :days::date[])
                as fresh (container_id, requirement, jurisdiction, decisive, standing, due, filled_in_time, changes_on,
                    changes_to, rule, reasons, site_id, customer_id, assessed_on)
            on conflict (container_id, requirement, jurisdiction) do update set decisive = excluded.decisive,
                standing = excluded.standing, due = excluded.due, filled_in_time = excluded.filled_in_time,
                changes_on = excluded.changes_on, changes_to = excluded.changes_to, rule = excluded.rule, reasons = excluded.reasons, site_id = excluded.site_id,
                customer_id = excluded.customer_id, rule_book_id = excluded.rule_book_id,
                assessed_on = excluded.assessed_on, changed_by = pg_current_xact_id(),
                changed_at =\s""" + CHANGED_AT;

    private final JdbcClient jdbc;
    private final KnownContainers containers;
    private final RuleBook rules;
    private final LoadedRuleBook loaded;
    private final BulkCopy copy;
    private final Clock clock;
    private final ApplicationEventPublisher events;

    Requirements(JdbcClient jdbc, KnownContainers containers, RuleBook rules, LoadedRuleBook loaded, BulkCopy copy,
            Clock clock, ApplicationEventPublisher events) {
        this.events = events;
        this.jdbc = jdbc;
        this.copy = copy;
        this.containers = containers;
        this.rules = rules;
        this.loaded = loaded;
        this.clock = clock;
    }

    /** "Today" is the date where the container stands. */
    public LocalDate today(KnownContainer container) {
        var where = container.where();
        return LocalDate.now(clock.withZone(where == null ? ZoneOffset.UTC : where.zone()));
    }

    /**
     * Whoever calls holds the chains of these containers, since before this reads them: {@code Journal.enter} takes them,
     * and so does {@link #reassessFree}. Of two who judge one container the later then reads what the earlier committed.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void reassess(Collection<UUID> ids) {
        var known = containers.byIds(ids);
        write(known);
        if (known.size() < ids.size()) {
            forget(ids, known);
        }
    }

    /**
     * The same without a fact of one's own, for those that nobody else is at; how many. Whoever is at one judges it by
     * itself, and to wait for it with others in hand could stop both for good: a ledger takes them batch by batch. The
     * containers are held besides, against a merge, which takes them first.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    int reassessFree(Collection<UUID> ids) {
        var free = jdbc.sql("""
                select c.id from container c join journal_head h on h.container_id = c.id where c.id = any (?)
                for key share of c skip locked for update of h skip locked""").param(ids.toArray(UUID[]::new))
                .query(UUID.class).list();
        // a statement of its own: it sees whatever was committed before the lock was had
        reassess(free);
        return free.size();
    }

    /** Nothing is due on a record that is closed. */
    private void forget(Collection<UUID> ids, List<KnownContainer> known) {
        var closed = new HashSet<>(ids);
        known.forEach(one -> closed.remove(one.id()));
        jdbc.sql("delete from requirement where container_id = any (?)").param(closed.toArray(UUID[]::new)).update();
        events.publishEvent(new ContainersAssessed(List.copyOf(closed)));
    }

    /** The same for containers that have just been registered and were never assessed: nothing to replace. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void assessFirst(Collection<UUID> ids) {
        if (ids.isEmpty()) {
            return;
        }
        var rows = new ArrayList<@Nullable Object[]>(ids.size());
        for (var known : containers.byIds(ids)) {
            for (var row : RequirementRow.of(known, today(known), rules)) {
                rows.add(new @Nullable Object[]{row.container(), row.requirement(), jurisdiction(row), row.decisive(),
                        row.standing(), row.due(), row.filledInTime(), changesOn(row), changesTo(row), row.rule(),
                        names(row.reasons()), site(known), customer(known), loaded.id(), row.assessedOn(), now()});
            }
        }
        copy.into("requirement (" + COLUMNS + ")", rows, row -> row);
        events.publishEvent(new ContainersAssessed(List.copyOf(ids)));
    }

    /** Empty where it is not known. */
    static String jurisdiction(RequirementRow row) {
        return row.jurisdiction() == null ? "" : row.jurisdiction().code();
    }

    private static @Nullable LocalDate changesOn(RequirementRow row) {
        return row.change() == null ? null : row.change().on();
    }

    private static @Nullable Status changesTo(RequirementRow row) {
        return row.change() == null ? null : row.change().to();
    }

    private static String[] names(List<ReasonCode> reasons) {
        return reasons.stream().map(Enum::name).toArray(String[]::new);
    }

    private void write(List<KnownContainer> assessed) {
        if (assessed.isEmpty()) {
            return;
        }
        var byId = assessed.stream().collect(Collectors.toMap(KnownContainer::id, Function.identity()));
        var rows = assessed.stream().flatMap(one -> RequirementRow.of(one, today(one), rules).stream()).toList();
        jdbc.sql("""
                delete from requirement old where container_id = any(:ids) and not exists (
                    select from unnest(:containers::uuid[], :requirements::text[], :jurisdictions::text[])
                        as fresh (container_id, requirement, jurisdiction)
                    where fresh.container_id = old.container_id and fresh.requirement = old.requirement
                        and fresh.jurisdiction = old.jurisdiction)""")
                .param("ids", byId.keySet().toArray(UUID[]::new))
                .param("containers", column(rows, RequirementRow::container, UUID[]::new))
                .param("requirements", texts(rows, RequirementRow::requirement))
                .param("jurisdictions", texts(rows, Requirements::jurisdiction)).update();
        insert(rows, byId);
        events.publishEvent(new ContainersAssessed(List.copyOf(byId.keySet())));
    }

    private void insert(List<RequirementRow> rows, Map<UUID, KnownContainer> byId) {
        jdbc.sql(WRITE).param("rule_book", loaded.id()).param("now", now())
                .param("containers", column(rows, RequirementRow::container, UUID[]::new))
                .param("requirements", texts(rows, RequirementRow::requirement))
                .param("jurisdictions", texts(rows, Requirements::jurisdiction))
                .param("decisive", column(rows, RequirementRow::decisive, Boolean[]::new))
                .param("standings", texts(rows, RequirementRow::standing))
                .param("due", texts(rows, RequirementRow::due))
                .param("filled", column(rows, RequirementRow::filledInTime, Boolean[]::new))
                .param("changes_on", texts(rows, Requirements::changesOn))
                .param("changes_to", texts(rows, Requirements::changesTo))
                .param("rules", texts(rows, RequirementRow::rule))
                .param("reasons", texts(rows, row -> String.join(",", names(row.reasons()))))
                .param("sites", column(rows, row -> site(byId.get(row.container())), UUID[]::new))
                .param("customers", column(rows, row -> customer(byId.get(row.container())), UUID[]::new))
                .param("days", texts(rows, RequirementRow::assessedOn)).update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    /** What is told beside the judgement changed. */
    void touch(Collection<UUID> ids) {
        jdbc.sql("update requirement set changed_by = pg_current_xact_id(), changed_at = " + CHANGED_AT
                + " where container_id = any (:ids) and decisive").param("now", now())
                .param("ids", ids.toArray(UUID[]::new)).update();
    }

    private static <T> T[] column(List<RequirementRow> rows, Function<RequirementRow, @Nullable T> value,
            IntFunction<T[]> array) {
        return rows.stream().map(value).toArray(array);
    }

    private static @Nullable String[] texts(List<RequirementRow> rows,
            Function<RequirementRow, @Nullable Object> value) {
        return rows.stream().map(value).map(given -> given == null ? null : given.toString()).toArray(String[]::new);
    }

    private static @Nullable UUID site(@Nullable KnownContainer container) {
        return container == null || container.where() == null ? null : container.where().siteId();
    }

    private static @Nullable UUID customer(@Nullable KnownContainer container) {
        return container == null || container.where() == null ? null : container.where().customerId();
    }
}
