package org.collarbook.schedule;

import java.time.Instant;

import org.springframework.boot.test.context.TestComponent;

/** The statement behind the CSV of the whole schedule, for benchmarks to run by itself. */
@TestComponent
public class WholeSchedule {

    private final ScheduleRows rows;

    WholeSchedule(ScheduleRows rows) {
        this.rows = rows;
    }

    public String copy() {
        return rows.copy(Source.stored(Instant.now()), ScheduleFilter.EVERYTHING, false);
    }
}
