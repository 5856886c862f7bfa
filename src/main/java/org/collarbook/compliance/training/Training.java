package org.collarbook.compliance.training;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A training that a person has completed; {@code expires} is the last day on which it counts. */
record Training(UUID id, Done done, Instant recordedAt, UUID recordedBy) {

    /** FILLING is what NFPA 58 asks for, from memory; the others are those of 49 CFR 172.704(a). */
    enum Kind {
        FILLING,
        GENERAL_AWARENESS,
        FUNCTION_SPECIFIC,
        SAFETY,
        SECURITY_AWARENESS
    }

    /** {@code person} is a name or a staff number, as entered. */
    record Done(String person, Kind kind, LocalDate trainedOn, LocalDate expires, String providedBy,
            @Nullable String materials, String certifiedBy) {}
}
