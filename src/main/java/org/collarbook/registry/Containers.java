package org.collarbook.registry;

import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
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

/** The register: one container at a time, or a few by what is read off them. */
@Component
public class Containers {

    private static final UUID FIRST = new UUID(0, 0);
    private static final String COUNTS_FOR = " and id in (select coalesce(a.into_id, o.id) from container o"
            + " left join absorbed a on a.container_id = o.id where o.%s)";

    private final StoredContainers stored;
    private final JdbcClient jdbc;
    private final Conflicts conflicts;
    private final Corrections corrections;
    private final Absorbed absorbed;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Containers(StoredContainers stored, JdbcClient jdbc, Conflicts conflicts, Corrections corrections,
            Absorbed absorbed,
            ApplicationEventPublisher events, Clock clock) {
        this.stored = stored;
        this.jdbc = jdbc;
        this.conflicts = conflicts;
        this.corrections = corrections;
        this.absorbed = absorbed;
        this.events = events;
        this.clock = clock;
    }

    @Transactional
    public Registration register(NewContainer content, Caller by) {
        var conflict = conflicts.of(content, null);
        if (conflict.isPresent()) {
            return conflict.get();
        }
        var container = Container.register(content, clock.instant(), by.id());
        save(container, content);
        events.publishEvent(new ContainerRegistered(container.getId()));
        return new Registration.Registered(container.getId());
    }

    /**
     * Replaces what is recorded, keeping every field's earlier value with the reason. Refuses by problem: not found, a
     * missing or stale {@code If-Match}, or marks or a tag that another container has.
     */
    @Transactional
    public RegisteredContainer correct(UUID id, @Nullable String ifMatch, NewContainer given, String reason,
            Caller by) {
        var before = forChange(id, ifMatch);
        write(before, given.correcting(before), new Act(reason, null), by);
        return find(id).orElseThrow();
    }

    /** Why a container is changed, and the earlier act that this one takes back, if any. */
    record Act(String reason, @Nullable UUID takesBack) {}

    /** A container after an act. */
    record Changed(RegisteredContainer container, UUID act) {}

    /** The same for an act that changes a part; one that changes nothing is refused by problem. */
    @Transactional
    Changed change(UUID id, @Nullable String ifMatch, Change change, Act act, Caller by) {
        var before = forChange(id, ifMatch);
        var done = write(before, change.of(before), act, by).orElseThrow(() -> Problem
                .conflict("NOTHING_CHANGES", "Container " + id + " is recorded so already. Nothing was stored.")
                .asException());
        return new Changed(find(id).orElseThrow(), done);
    }

    /** What a container is to be, by what it is. */
    interface Change {

        NewContainer of(RegisteredContainer before);
    }

    /** Locked before it is read, or a faster correction could slip in between and be overwritten. */
    private RegisteredContainer forChange(UUID id, @Nullable String ifMatch) {
        lock(id);
        var before = require(id);
        new Revision(before.version()).requireMatch(ifMatch);
        return before;
    }

    private Optional<UUID> write(RegisteredContainer before, NewContainer content, Act act, Caller by) {
        var id = before.id();
        var differences = Difference.between(before.content(), content);
        if (differences.isEmpty()) {
            return Optional.empty();
        }
        conflicts.of(content, id).ifPresent(conflict -> {
            throw conflict.problem().asException();
        });
        var container = stored.findById(id).orElseThrow();
        container.correct(content);
        save(container, content);
        var done = corrections.record(id, differences, act.takesBack, act.reason, by.id());
        events.publishEvent(new ContainerChanged(id));
        return Optional.of(done);
    }

    private void save(Container container, NewContainer content) {
        try {
            stored.saveAndFlush(container);
        } catch (DataIntegrityViolationException raced) {
            throw conflicts.lost(raced, content, container.getId());
        }
    }

    public Optional<RegisteredContainer> find(UUID id) {
        return jdbc.sql(ContainerRows.SELECT + "where id = ?").param(id).query(ContainerRows::read).optional();
    }

    /** The same, refusing by problem an id that no container has. */
    public RegisteredContainer require(UUID id) {
        return find(id).orElseThrow(() -> Problem.notFound("container").asException());
    }

    /**
     * A page of those that have the serial number and the tag asked for, or of all; by id. What was merged into another is
     * found by its own marks, and is that other one.
     */
    public Page<RegisteredContainer> page(@Nullable Serial serial, @Nullable Tag tag, @Nullable UUID after,
            PageSize size) {
        var asked = (serial == null ? "" : COUNTS_FOR.formatted("serial = :serial"))
                + (tag == null ? "" : COUNTS_FOR.formatted("tag = :tag"));
        var read = jdbc.sql(ContainerRows.SELECT + "where id > :after" + asked + " and not exists (select from absorbed"
                + " a where a.container_id = c.id) order by id limit :most")
                .param("after", after == null ? FIRST : after).param("serial", serial == null ? "" : serial.value())
                .param("tag", tag == null ? "" : tag.value()).param("most", size.limit())
                .query(ContainerRows::read).list();
        return Page.of(read, size, container -> Cursor.after(container.id()));
    }

    /** The containers that bear these tags. */
    public Map<Tag, UUID> byTags(Collection<Tag> tags) {
        var found = new HashMap<Tag, UUID>();
        jdbc.sql(
                "select o.tag, coalesce(a.into_id, o.id) from container o left join absorbed a on a.container_id = o.id"
                        + " where o.tag = any (?)")
                .param(tags.stream().map(Tag::value).toArray(String[]::new)).query(row -> {
                    found.put(new Tag(row.getString(1)), row.getObject(2, UUID.class));
                });
        return found;
    }

    /** All that bear one of these serial numbers, of whatever maker, or have absorbed one that did. */
    public Map<Serial, Collection<RegisteredContainer>> bySerials(Collection<Serial> serials) {
        var found = new HashMap<Serial, Map<UUID, RegisteredContainer>>();
        jdbc.sql("select " + ContainerRows.COLUMNS + """
                , o.serial as borne from container o left join absorbed a on a.container_id = o.id
                join container c on c.id = coalesce(a.into_id, o.id) where o.serial = any (?) order by c.id""")
                .param(serials.stream().map(Serial::value).toArray(String[]::new)).query(row -> {
                    var container = ContainerRows.read(row, 0);
                    found.computeIfAbsent(new Serial(row.getString("borne")), one -> new LinkedHashMap<>())
                            .put(container.id(), container);
                });
        var bearing = new HashMap<Serial, Collection<RegisteredContainer>>();
        found.forEach((serial, containers) -> bearing.put(serial, containers.values()));
        return bearing;
    }

    /** Holds these containers until the transaction ends, always in the same order; those of them that are known. */
    public Set<UUID> lock(Collection<UUID> ids) {
        return jdbc.sql("select id from container where id = any (?) order by id for no key update")
                .param(ids.toArray(UUID[]::new)).query(UUID.class).set();
    }

    /**
     * Holds the container until the transaction ends, so that what is decided about it stays true; false: unknown. Refuses
     * by problem a record that was merged into another.
     */
    public boolean lock(UUID id) {
        boolean known = jdbc.sql("select id from container where id = ? for no key update").param(id)
                .query(UUID.class).optional().isPresent();
        // a statement of its own: a merge that the lock has waited for is seen by the next one only
        absorbed.refuse(id);
        return known;
    }

    /** The same, refusing by problem an id that no container has. */
    public void lockKnown(UUID id) {
        if (!lock(id)) {
            throw Problem.notFound("container").asException();
        }
    }

    /** Several, one after the other, against facts that are being recorded too. */
    void lockForIdentity(Collection<UUID> ids) {
        jdbc.sql("select id from container where id = any (?) order by id for update")
                .param(ids.toArray(UUID[]::new)).query(UUID.class).list();
    }
}
