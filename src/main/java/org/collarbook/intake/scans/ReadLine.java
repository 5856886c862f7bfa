package org.collarbook.intake.scans;

import java.time.Instant;
import java.util.List;
import java.util.Map;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.platform.FieldError;
import org.jspecify.annotations.Nullable;

/**
 * A line at its place in the batch, read or not; {@code id} is null where not even that was read. {@code content} is the
 * SHA-256 of the line as sent.
 */
record ReadLine(int position, @Nullable String id, byte[] content, Told told) {

    sealed interface Told {}

    /** {@code marks} name the containers whose ids the line does not tell, by the pointer to each. */
    record Line(ScanLine line, Instant at, Map<String, WhichContainer> marks) implements Told {

        public Line {
            marks = Map.copyOf(marks);
        }
    }

    record Unreadable(List<FieldError> errors) implements Told {

        public Unreadable {
            errors = List.copyOf(errors);
        }
    }

    /** Lines are settled in the order in which they happened; what cannot be read comes first. */
    Instant at() {
        return told instanceof Line(var _, var at, var _) ? at : Instant.MIN;
    }
}
