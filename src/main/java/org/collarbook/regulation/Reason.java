package org.collarbook.regulation;

import org.jspecify.annotations.Nullable;

public record Reason(ReasonCode code, String text, @Nullable Citation citation) {

    public static Reason of(ReasonCode code) {
        return code.reason();
    }
}
