package org.collarbook.compliance.training;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Trainings as facts. An untrained person may fill under direct supervision, so nothing here refuses a fill. */
@Component
public class Trainings {

    private static final LocalDate READ_ON = LocalDate.of(2026, 11, 25);
    /** As a training firm quotes the paragraph; of 172.704(c) a union's page of the agency's leaflet was read. */
    private static final Citation UNTRAINED = new Citation("49 CFR", "172.702(b); 172.704(c)(1)",
            "as a training firm quotes it", READ_ON, null,
            "https://dgtraining.com/knowledge-base/us-dot-hazmat-training-requirements/", READ_ON, READ_ON,
            Basis.QUOTED);
    private static final Citation RECURRENT = new Citation("49 CFR", "172.704(c)(2)",
            "as a union tells the agency's leaflet", READ_ON, null,
            "https://www.goiam.org/news/departments/hq/safety-and-health/us-department-of-transportation-pipeline-and"
                    + "-hazardous-materials-safety-administration/",
            READ_ON, READ_ON, Basis.SECONDARY);
    private static final String SELECT = "select t.* from training t ";

    private final JdbcClient jdbc;
    private final Clock clock;

    Trainings(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional
    Training record(Training.Done done, Caller by) {
        var id = Ids.next();
        int stored = jdbc.sql("""
                insert into training (id, person, kind, trained_on, expires, provided_by, materials, certified_by,
                    recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict on constraint training_once do nothing""")
                .params(id, done.person(), done.kind().name(), done.trainedOn(), done.expires(), done.providedBy(),
                        done.materials(), done.certifiedBy(), clock.instant().atOffset(ZoneOffset.UTC), by.id())
                .update();
        if (stored == 0) {
            throw Problem.conflict("ALREADY_RECORDED", "This training of " + done.person() + " on " + done.trainedOn()
                    + " is recorded already. Nothing was stored.").asException();
        }
        return jdbc.sql(SELECT + "where t.id = ?").param(id).query(Trainings::read).single();
    }

    /**
     * By the day on which they expire. With {@code before} those that expire before that day and that no later training
     * of the person in the same has taken the place of.
     */
    List<Training> list(@Nullable String person, @Nullable LocalDate before, @Nullable LocalDate day,
            @Nullable UUID id, PageSize size) {
        return jdbc.sql(SELECT + """
                where (:person::text is null or t.person = :person)
                  and (cast(:before as date) is null or t.expires < cast(:before as date) and not exists (
                    select from training later where later.person = t.person and later.kind = t.kind
                      and later.expires > t.expires))
                  and (cast(:day as date) is null or (t.expires, t.id) > (cast(:day as date), cast(:id as uuid)))
                order by t.expires, t.id limit :most""").param("person", person).param("before", before)
                .param("day", day).param("id", id).param("most", size.limit()).query(Trainings::read).list();
    }

    /** What is to be told of the filler's training on a day; nothing where it was in force. */
    public Optional<Reason> ofFiller(String person, LocalDate day) {
        var last = jdbc.sql("""
                select max(expires) from training
                where person = ? and kind in ('FILLING', 'FUNCTION_SPECIFIC') and trained_on <= ?""")
                .params(person, day).query((row, number) -> Optional.ofNullable(row.getObject(1, LocalDate.class)))
                .single();
        return last.isEmpty()
                ? Optional.of(ReasonCode.TRAINING_NOT_RECORDED.citing(UNTRAINED))
                : last.get().isBefore(day)
                        ? Optional.of(ReasonCode.TRAINING_EXPIRED.citing(RECURRENT))
                        : Optional.empty();
    }

    private static Training read(ResultSet row, int number) throws SQLException {
        return new Training(row.getObject("id", UUID.class),
                new Training.Done(row.getString("person"), Training.Kind.valueOf(row.getString("kind")),
                        row.getObject("trained_on", LocalDate.class), row.getObject("expires", LocalDate.class),
                        row.getString("provided_by"), row.getString("materials"), row.getString("certified_by")),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class));
    }
}
