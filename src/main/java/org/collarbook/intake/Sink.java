package org.collarbook.intake;

import java.util.List;

/** Where a pass puts what a batch of rows brings. */
interface Sink {

    void take(BatchPlaces places, List<Write> writes, Terms terms);

    /** The places that earlier rows open are not in the register. */
    boolean isForetelling();
}
