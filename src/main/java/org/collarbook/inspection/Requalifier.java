package org.collarbook.inspection;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.regulation.Rin;

/** A facility that requalifies or repairs cylinders, and the approval that it holds. */
public record Requalifier(UUID id, int version, Rin rin, String name, Approval approval) {

    /** From the one day through the other. */
    public record Approval(LocalDate from, LocalDate expires) {

        public Approval {
            if (expires.isBefore(from)) {
                throw new IllegalArgumentException("approval from " + from + " to " + expires
                        + ": expected an end that is not before its beginning");
            }
        }
    }

    /** The facility as a record keeps it. */
    public record Named(Rin rin, String name, Approval approval) {}

    public Named named() {
        return new Named(rin, name, approval);
    }
}
