package org.collarbook.compliance;

import org.springframework.boot.test.context.TestComponent;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Runs the recompute of the whole register at once, whether or not it is due. */
@TestComponent
public class RecomputeNow {

    private final Recompute recompute;
    private final JdbcClient jdbc;

    RecomputeNow(Recompute recompute, JdbcClient jdbc) {
        this.recompute = recompute;
        this.jdbc = jdbc;
    }

    public void run() {
        jdbc.sql("update recompute set finished_at = null, after_container = null").update();
        recompute.run();
    }
}
