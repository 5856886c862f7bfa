package org.collarbook.inspection;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.inspection.bench.Judgement;
import org.collarbook.inspection.bench.TestSheet;
import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.databind.json.JsonMapper;

/** Writes a judged record: the row that assessments read, and its full contents beside it. */
@Component
class TestRecords {

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    TestRecords(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    UUID write(UUID container, TestSheet sheet, Judgement judged, @Nullable Requalifier requalifier, Caller by) {
        var id = Ids.next();
        jdbc.sql("""
                insert into requalification (id, container_id, month, method, star, plus, rin, result, performed_on,
                    recorded_before, recorded_at, recorded_by)
                select :id, :container, :month, :method, :star, :plus, :rin, :result, :day,
                    (select count(*) from requalification
                     where container_id = :container and month = :month and method = :method and result = :result
                       and rin is not distinct from :rin and performed_on = :day), :at, :by""")
                .param("id", id).param("container", container).param("month", sheet.month().atDay(1))
                .param("method", sheet.method().name()).param("star", sheet.star()).param("plus", sheet.plus())
                .param("rin", sheet.rin() == null ? null : sheet.rin().value())
                .param("result", judged.result().name()).param("day", sheet.performedOn()).param("at", now())
                .param("by", by.id()).update();
        writeContents(id, sheet, judged, requalifier);
        return id;
    }

    private void writeContents(UUID id, TestSheet sheet, Judgement judged, @Nullable Requalifier requalifier) {
        var measured = sheet.expansion();
        var approval = requalifier == null ? null : requalifier.approval();
        jdbc.sql("""
                insert into test_record (requalification_id, requalifier_id, requalifier_name, approved_from,
                    approval_expires, visual, marked_pressure_psig, test_pressure_psig, minimum_psig, total_cm3,
                    elastic_cm3, permanent_cm3, permanent_percent, limit_percent, repeats, coating, owner, operator,
                    tare_lb, tare_loss_percent, grounds, disposition, note,
                    remarks)
                values (?, ?, ?, ?, ?, cast(? as jsonb), ?, ?, ?, ?, ?, ?, ?, ?, cast(? as jsonb), ?, ?, ?, ?, ?, ?,
                    ?, ?, cast(? as jsonb))""")
                .params(id, requalifier == null ? null : requalifier.id(),
                        requalifier == null ? null : requalifier.name(), approval == null ? null : approval.from(),
                        approval == null ? null : approval.expires(), json.writeValueAsString(sheet.visual()),
                        sheet.markedPressurePsig(), sheet.testPressurePsig(), judged.minimumPsig(),
                        measured == null ? null : measured.total(), measured == null ? null : measured.elastic(),
                        measured == null ? null : measured.permanent(), judged.permanentPercent(),
                        judged.limitPercent(), json.writeValueAsString(sheet.repeats()), sheet.coating(),
                        sheet.owner(), sheet.operator(), sheet.tareLb(), judged.tareLossPercent(),
                        sheet.grounds().stream().map(Enum::name).toArray(String[]::new), sheet.disposition(),
                        sheet.note(),
                        json.writeValueAsString(judged.remarks()))
                .update();
    }

    void writeCorrection(UUID corrected, @Nullable UUID replacedBy, String reason, Caller by) {
        jdbc.sql("""
                insert into requalification_correction (id, corrects, replaced_by, reason, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?)""")
                .params(Ids.next(), corrected, replacedBy, reason, now(), by.id()).update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
