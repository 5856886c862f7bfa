package org.collarbook.registry;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Keeps what a container's fields said before, and why they were changed; what is changed together is one act. */
@Component
class Corrections {

    private final BulkCopy copy;
    private final Clock clock;

    Corrections(BulkCopy copy, Clock clock) {
        this.copy = copy;
        this.clock = clock;
    }

    private record Row(UUID container, UUID act, @Nullable UUID takesBack, Difference difference) {}

    /** The id of the act. */
    UUID record(UUID container, List<Difference> differences, @Nullable UUID takesBack, String reason, UUID by) {
        var act = Ids.next();
        write(differences.stream().map(difference -> new Row(container, act, takesBack, difference)).toList(), reason,
                by);
        return act;
    }

    void record(List<ContainerBatch.Change> changes, String reason, UUID by) {
        var rows = new ArrayList<Row>();
        for (var change : changes) {
            var act = Ids.next();
            Difference.between(change.before().content(), change.after())
                    .forEach(difference -> rows.add(new Row(change.before().id(), act, null, difference)));
        }
        write(rows, reason, by);
    }

    private void write(List<Row> rows, String reason, UUID by) {
        var now = clock.instant();
        copy.into("mark_correction (id, container_id, act_id, takes_back, field, was, became, reason, recorded_at,"
                + " recorded_by)", rows,
                row -> new @Nullable Object[]{Ids.next(), row.container, row.act, row.takesBack,
                        row.difference.field(), row.difference.recorded(), row.difference.given(), reason, now, by});
    }
}
