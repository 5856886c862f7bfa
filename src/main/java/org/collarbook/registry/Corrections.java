package org.collarbook.registry;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Keeps what a container's fields said before, and why they were changed. */
@Component
class Corrections {

    private final BulkCopy copy;
    private final Clock clock;

    Corrections(BulkCopy copy, Clock clock) {
        this.copy = copy;
        this.clock = clock;
    }

    private record Row(UUID container, Difference difference) {}

    void record(UUID container, List<Difference> differences, String reason, UUID by) {
        write(differences.stream().map(difference -> new Row(container, difference)).toList(), reason, by);
    }

    void record(List<ContainerBatch.Change> changes, String reason, UUID by) {
        var rows = new ArrayList<Row>();
        for (var change : changes) {
            Difference.between(change.before().content(), change.after())
                    .forEach(difference -> rows.add(new Row(change.before().id(), difference)));
        }
        write(rows, reason, by);
    }

    private void write(List<Row> rows, String reason, UUID by) {
        var now = clock.instant();
        copy.into("mark_correction (id, container_id, field, was, became, reason, recorded_at, recorded_by)", rows,
                row -> new @Nullable Object[]{Ids.next(), row.container, row.difference.field(),
                        row.difference.recorded(), row.difference.given(), reason, now, by});
    }
}
