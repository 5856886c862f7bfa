package org.collarbook.inspection;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.inspection.Requalifier.Approval;
import org.collarbook.inspection.Requalifier.Named;
import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The facilities whose records are accepted. */
@Component
public class Requalifiers {

    private static final String SELECT = "select id, version, rin, name, approved_from, expires from requalifier ";

    private final JdbcClient jdbc;
    private final Clock clock;

    Requalifiers(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem a RIN that another facility has. */
    @Transactional
    public Requalifier register(Named facility, Caller by) {
        var id = Ids.next();
        try {
            jdbc.sql("""
                    insert into requalifier (id, rin, name, approved_from, expires, created_at, created_by)
                    values (?, ?, ?, ?, ?, ?, ?)""")
                    .params(id, facility.rin().value(), facility.name(), facility.approval().from(),
                            facility.approval().expires(), clock.instant().atOffset(ZoneOffset.UTC), by.id())
                    .update();
        } catch (DuplicateKeyException taken) {
            throw taken(facility.rin());
        }
        return find(id).orElseThrow();
    }

    /** Records of the past keep the approval that they were made under. */
    @Transactional
    public Requalifier change(UUID id, @Nullable String ifMatch, Named facility) {
        var before = jdbc.sql(SELECT + "where id = ? for no key update").param(id).query(Requalifiers::read)
                .optional().orElseThrow(() -> Problem.notFound("requalifier").asException());
        new Revision(before.version()).requireMatch(ifMatch);
        try {
            jdbc.sql("""
                    update requalifier set rin = ?, name = ?, approved_from = ?, expires = ?, version = version + 1
                    where id = ?""")
                    .params(facility.rin().value(), facility.name(), facility.approval().from(),
                            facility.approval().expires(), id)
                    .update();
        } catch (DuplicateKeyException taken) {
            throw taken(facility.rin());
        }
        return find(id).orElseThrow();
    }

    private static RuntimeException taken(Rin rin) {
        return Problem.conflict("RIN_TAKEN", "Another requalifier has the RIN " + rin
                + ": a RIN is assigned to one facility. Nothing was stored.").asException();
    }

    public Optional<Requalifier> find(UUID id) {
        return jdbc.sql(SELECT + "where id = ?").param(id).query(Requalifiers::read).optional();
    }

    public Page<Requalifier> page(@Nullable UUID after, PageSize size) {
        var read = jdbc.sql(SELECT + """
                where id > coalesce(cast(? as uuid), '00000000-0000-0000-0000-000000000000') order by id limit ?""")
                .params(after, size.limit()).query(Requalifiers::read).list();
        return Page.of(read, size, one -> Cursor.after(one.id()));
    }

    /**
     * The facility, if its approval held on that day; else null, and a refusal. What becomes of the approval later
     * leaves what it did on that day as it is.
     */
    @Nullable
    Requalifier approved(Rin rin, LocalDate on, Refusals refusals) {
        // held, so that its approval is not changed under a record that rests on it
        var known = jdbc.sql(SELECT + "where rin = ? for share").param(rin.value()).query(Requalifiers::read)
                .optional().orElse(null);
        if (known == null) {
            refusals.refuse("/requalifier", "UNKNOWN_REQUALIFIER", rin, "the RIN of a facility in the register",
                    Sources.APPROVAL);
            return null;
        }
        var approval = known.approval();
        if (on.isBefore(approval.from()) || on.isAfter(approval.expires())) {
            refusals.refuse("/requalifier", on.isAfter(approval.expires()) ? "RIN_EXPIRED" : "RIN_NOT_YET_APPROVED",
                    rin, "a facility whose approval held on " + on + "; this one's runs from " + approval.from()
                            + " through " + approval.expires(),
                    Sources.APPROVAL);
            return null;
        }
        return known;
    }

    private static Requalifier read(ResultSet row, int number) throws SQLException {
        return new Requalifier(row.getObject("id", UUID.class), row.getInt("version"), new Rin(row.getString("rin")),
                row.getString("name"), new Approval(row.getObject("approved_from", LocalDate.class),
                        row.getObject("expires", LocalDate.class)));
    }
}
