package org.collarbook.regulation;

import java.util.List;

/** What a stamped requalification mark says. */
public sealed interface MarkReading {

    record Read(Requalification requalification, List<String> warnings) implements MarkReading {}

    /** More than one reading is possible, and nothing known decides between them. */
    record Ambiguous(List<Requalification> readings) implements MarkReading {}

    record Unreadable(int index, String found, String expected) implements MarkReading {}
}
