package org.collarbook.compliance;

import org.springframework.boot.test.context.TestComponent;

/** Runs the recompute at once: of all that was judged by other rules than are in force. */
@TestComponent
public class RecomputeNow {

    private final Recompute recompute;

    RecomputeNow(Recompute recompute) {
        this.recompute = recompute;
    }

    public void run() {
        recompute.run();
    }
}
