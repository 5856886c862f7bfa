package org.collarbook.compliance.declarations;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.declarations.GroupDeclaration.State;
import org.collarbook.compliance.declarations.GroupDeclaration.Withdrawal;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Declarations;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Declarations for groups of containers, and their withdrawal. {@link DeclarationSweep} carries both out. */
@Component
class GroupDeclarations {

    private static final String SELECT = """
            select d.*, g.told, w.reason, w.recorded_at as withdrawn_at, w.recorded_by as withdrawn_by,
                case when s.undone_at is not null then 'WITHDRAWN' when w.reason is not null then 'WITHDRAWING'
                    when s.finished_at is not null then 'APPLIED' else 'APPLYING' end as state
            from group_declaration g join declaration d on d.id = g.declaration_id
            join declaration_sweep s on s.declaration_id = d.id
            left join declaration_withdrawal w on w.declaration_id = d.id
            """;

    private final JdbcClient jdbc;
    private final Declarations declarations;
    private final ApplyDeclaration apply;
    private final Clock clock;

    GroupDeclarations(JdbcClient jdbc, Declarations declarations, ApplyDeclaration apply, Clock clock) {
        this.jdbc = jdbc;
        this.declarations = declarations;
        this.apply = apply;
        this.clock = clock;
    }

    /** Refuses by problem a group that names what the register does not have. */
    void refuseUnknown(Group group) {
        var errors = new HashSet<FieldError>();
        var ids = group.containers();
        if (ids != null) {
            jdbc.sql("select k.id from unnest(?::uuid[]) as k (id) where not exists (select from container c"
                    + " where c.id = k.id) order by k.id limit 100").param(ids.toArray(UUID[]::new))
                    .query(UUID.class).list().forEach(id -> errors.add(new FieldError("/group/containers/"
                            + ids.indexOf(id), "UNKNOWN_CONTAINER", id.toString(), "the id of a container")));
        }
        known("site", group.site(), errors);
        known("customer", group.customer(), errors);
        if (!errors.isEmpty()) {
            throw Problem.invalid(List.copyOf(errors)).asException();
        }
    }

    private void known(String table, @Nullable UUID id, HashSet<FieldError> errors) {
        if (id != null && !jdbc.sql("select exists (select from " + table + " where id = ?)").param(id)
                .query(Boolean.class).single()) {
            errors.add(new FieldError("/group/" + table, "UNKNOWN_" + table.toUpperCase(Locale.ROOT),
                    id.toString(), "the id of a " + table));
        }
    }

    /** Records it with its group, and carries it out for the first of them. */
    @Transactional(propagation = Propagation.MANDATORY)
    GroupDeclaration record(Declaration said, Group group, String told, Caller by) {
        declarations.add(said, by.id());
        jdbc.sql("insert into group_declaration (declaration_id, told) values (?, ?)").params(said.id(), told)
                .update();
        jdbc.sql("insert into declaration_sweep (declaration_id) values (?)").param(said.id()).update();
        jdbc.sql("insert into declaration_member (declaration_id, container_id) select :declaration, c.id "
                + group.members()).param("declaration", said.id()).params(group.parameters()).update();
        apply.fillNext(require(said.id()), ApplyDeclaration.FIRST);
        apply.finish(said.id());
        return require(said.id());
    }

    /** Refuses by problem one that was withdrawn before. Waits for what is being filled by it at this moment. */
    @Transactional(propagation = Propagation.MANDATORY)
    GroupDeclaration withdraw(UUID id, String reason, Caller by) {
        apply.lock(id);
        int withdrawn = jdbc.sql("""
                insert into declaration_withdrawal (declaration_id, reason, recorded_at, recorded_by)
                values (?, ?, ?, ?) on conflict do nothing""")
                .params(id, reason, clock.instant().atOffset(ZoneOffset.UTC), by.id()).update();
        if (withdrawn == 0) {
            throw Problem.conflict("DECLARATION_WITHDRAWN", "This declaration was withdrawn before. Nothing was"
                    + " stored.").asException();
        }
        apply.undoNext(require(id), ApplyDeclaration.FIRST);
        apply.finish(id);
        return require(id);
    }

    GroupDeclaration require(UUID id) {
        return find(id).orElseThrow(() -> Problem.notFound("declaration").asException());
    }

    Optional<GroupDeclaration> find(UUID id) {
        return jdbc.sql(SELECT + "where d.id = ?").param(id).query(GroupDeclarations::read).optional();
    }

    /** The latest first. */
    List<GroupDeclaration> page(@Nullable UUID before, PageSize size) {
        return jdbc.sql(SELECT + """
                where d.id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by d.id desc limit :most""").param("before", before).param("most", size.limit())
                .query(GroupDeclarations::read).list();
    }

    private static GroupDeclaration read(ResultSet row, int number) throws SQLException {
        var reason = row.getString("reason");
        return new GroupDeclaration(Declarations.read(row, number), row.getString("told"),
                State.valueOf(row.getString("state")),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class), reason == null
                        ? null
                        : new Withdrawal(reason, StoredMoment.of(row, "withdrawn_at"),
                                row.getObject("withdrawn_by", UUID.class)));
    }
}
