package org.collarbook.inspection;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.databind.json.JsonMapper;

/** Reads what is on record, with its full contents and what became of it. */
@Component
public class RecordedTests {

    private static final String SELECT = """
            select q.*, t.requalification_id, t.requalifier_name, t.approved_from, t.approval_expires, t.visual,
                t.marked_pressure_psig, t.test_pressure_psig, t.minimum_psig, t.total_cm3, t.permanent_cm3,
                t.permanent_percent, t.limit_percent, t.repeats, t.coating, t.owner, t.operator, t.tare_lb,
                t.tare_loss_percent, t.grounds, t.disposition, t.note, t.remarks,
                made.corrects as made_corrects, made.reason as made_reason,
                k.id as correction_id, k.replaced_by, k.reason as correction_reason,
                k.recorded_at as corrected_at, k.recorded_by as corrected_by
            from filed_requalification q
            left join test_record t on t.requalification_id = q.id
            left join requalification_correction made on made.replaced_by = q.id
            left join requalification_correction k on k.corrects = q.id
            """;

    private final JdbcClient jdbc;
    private final RecordedTestRow rows;

    RecordedTests(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.rows = new RecordedTestRow(json);
    }

    public Optional<RecordedTest> find(UUID id) {
        return jdbc.sql(SELECT + "where q.id = ?").param(id).query(rows::read).optional();
    }

    /** Where a page of a container's records goes on. */
    public record Before(LocalDate day, UUID id) {}

    /** The newest first; what was corrected only when asked for. */
    public List<RecordedTest> of(UUID container, boolean withCorrected, @Nullable Before before, PageSize size) {
        return jdbc.sql(SELECT + """
                where q.container_id = :container and (:all or k.id is null)
                  and (cast(:day as date) is null
                    or (coalesce(q.performed_on, q.month), q.id) < (cast(:day as date), cast(:id as uuid)))
                order by coalesce(q.performed_on, q.month) desc, q.id desc limit :most""")
                .param("container", container).param("all", withCorrected)
                .param("day", before == null ? null : before.day()).param("id", before == null ? null : before.id())
                .param("most", size.limit()).query(rows::read).list();
    }
}
