package org.collarbook.holds;

import java.time.YearMonth;

import org.collarbook.regulation.Citation;

/** What became of the placing of a hold. */
public sealed interface Placing {

    record Placed(Hold hold) implements Placing {}

    /** A 4E cylinder that was in a fire is out of service for good: it was condemned in that month instead. */
    record Condemned(YearMonth month) implements Placing {

        public static final String TEXT = "A 4E cylinder that was in a fire is out of service for good: it is condemned.";
        public static final Citation CITATION = Source.fireOnAluminium();
    }

    /** Nothing was stored: it is out of service for good. */
    record AlreadyCondemned() implements Placing {}

    record UnknownContainer() implements Placing {}
}
