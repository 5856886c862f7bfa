package org.collarbook.inspection;

import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Places;
import org.collarbook.inspection.bench.Judge;
import org.collarbook.inspection.bench.Judgement;
import org.collarbook.inspection.bench.Marked;
import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.inspection.bench.TestSheet;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers;
import org.collarbook.registry.Refiling;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** A completed inspection or test goes on record, its result computed, and the due month moves with it. */
@Component
public class RecordRequalification {

    private static final String STANDS = """
            and not exists (select from requalification_correction k where k.corrects = q.id)""";

    private final Containers containers;
    private final Requalifiers requalifiers;
    private final Places places;
    private final TestRecords records;
    private final Refiling refiling;
    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    RecordRequalification(Containers containers, Requalifiers requalifiers, Places places, TestRecords records,
            Refiling refiling, JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.containers = containers;
        this.requalifiers = requalifiers;
        this.places = places;
        this.records = records;
        this.refiling = refiling;
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    /** Refuses by problem; a refused record leaves no trace. */
    @Transactional
    public UUID record(UUID container, TestSheet sheet, Caller by) {
        containers.lockKnown(container);
        refuseCondemned(container);
        var id = write(container, sheet, null, "", by);
        events.publishEvent(new RequalificationRecorded(container, sheet.performedOn()));
        return id;
    }

    /** Of a container that is locked; {@code pointer} is where in the request the record stands. */
    UUID write(UUID id, TestSheet sheet, @Nullable UUID corrects, String pointer, Caller by) {
        var refusals = new Refusals(pointer);
        var container = containers.find(id).orElseThrow();
        var requalifier = sheet.rin() == null
                ? null
                : requalifiers.approved(sheet.rin(), sheet.performedOn(), refusals);
        var judged = Judge.judge(Marked.from(container.marks()), sheet, lossStands(id, sheet, corrects),
                today(id), refusals);
        refusals.done();
        if (judged == null) {
            throw new IllegalStateException("a record was neither judged nor refused");
        }
        refuseDuplicate(id, sheet, judged, corrects);
        // what takes another's place goes where that one goes, should the records be told apart again
        var recordedOn = corrects == null ? id : refiling.recordedOn(corrects).orElse(id);
        var written = records.write(recordedOn, sheet, judged, requalifier, by);
        if (corrects != null) {
            refiling.likeThat(written, corrects);
        }
        return written;
    }

    void refuseWrongDay(UUID container, LocalDate day, Marked marked, Refusals refusals) {
        Judge.refuseWrongDay(day, marked, today(container), refusals);
    }

    /** The date where it stands. */
    private LocalDate today(UUID container) {
        return LocalDate.now(clock.withZone(places.zoneOf(container)));
    }

    /** A look from outside, later, does not clear what asked for a pressure test, 49 CFR 180.209(c). */
    private boolean lossStands(UUID container, TestSheet sheet, @Nullable UUID corrects) {
        return jdbc.sql("""
                select exists (select from filed_requalification q join test_record t on t.requalification_id = q.id
                    where q.container_id = :container and q.result = 'REJECTED' and q.performed_on <= :day
                      and t.remarks @> '[{"code": "TARE_LOSS"}]' and q.id is distinct from :corrects\s""" + STANDS + """
                \sand not exists (select from filed_requalification p
                    where p.container_id = :container and p.result = 'PASSED' and p.performed_on > q.performed_on
                      and p.performed_on <= :day and p.method in ('VOLUMETRIC_EXPANSION', 'PROOF_PRESSURE')
                      and not exists (select from requalification_correction k where k.corrects = p.id)))""")
                .param("container", container).param("day", sheet.performedOn()).param("corrects", corrects)
                .query(Boolean.class).single();
    }

    void refuseCondemned(UUID container) {
        jdbc.sql("select id from filed_requalification q where container_id = ? and result = ? " + STANDS + " limit 1")
                .params(container, Result.CONDEMNED.name()).query(UUID.class).optional().ifPresent(condemned -> {
                    throw Problem.conflict("CONDEMNED", "This container is condemned for good: neither requalification"
                            + " nor repair brings it back. Nothing was stored. Where the condemnation was a mistake, an"
                            + " administrator corrects that record.").with("requalification", condemned)
                            .with("citation", Sources.CONDEMNED_FOR_GOOD).asException();
                });
    }

    /** A mark that tells its month alone may be of this very test. */
    private void refuseDuplicate(UUID container, TestSheet sheet, Judgement judged, @Nullable UUID corrects) {
        jdbc.sql("""
                select id from filed_requalification q
                where container_id = :container and month = :month and method = :method and result = :result
                  and rin is not distinct from :rin and (performed_on is null or performed_on = :day)
                  and id is distinct from :corrects\s""" + STANDS + " limit 1")
                .param("container", container).param("month", sheet.month().atDay(1))
                .param("method", sheet.method().name()).param("result", judged.result().name())
                .param("rin", sheet.rin() == null ? null : sheet.rin().value()).param("day", sheet.performedOn())
                .param("corrects", corrects).query(UUID.class).optional().ifPresent(known -> {
                    throw Problem.conflict("ALREADY_RECORDED", "This container already has " + sheet.method() + " of "
                            + sheet.performedOn()
                            + " (or of that month, where no day is known) by this requalifier with"
                            + " this result. Nothing was stored: correct that entry if it says too little.")
                            .with("requalification", known).asException();
                });
    }
}
