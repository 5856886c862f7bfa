package org.collarbook.intake;

import java.util.List;

import org.collarbook.platform.Unwritten;

/** Where a pass puts what a batch of rows brings. */
interface Sink {

    /** What follows from it is written at the latest when the transaction ends. */
    Unwritten take(BatchPlaces places, List<Write> writes, Terms terms);

    /** The places that earlier rows open are not in the register. */
    boolean isForetelling();
}
