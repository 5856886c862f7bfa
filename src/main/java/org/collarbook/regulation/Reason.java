package org.collarbook.regulation;

import org.jspecify.annotations.Nullable;

/** Why an answer is what it is; {@code requirement} when it follows from one clock. */
public record Reason(ReasonCode code, String text, @Nullable Requirement requirement, @Nullable Citation citation) {

    public Reason(ReasonCode code, String text, @Nullable Citation citation) {
        this(code, text, null, citation);
    }

    public static Reason of(ReasonCode code) {
        return code.reason();
    }
}
