package org.collarbook.regulation;

import java.util.List;

/** Allowed, or not with all its reasons. */
public record Permission(boolean allowed, List<Reason> reasons) {

    public static final Permission ALLOWED = new Permission(true, List.of());

    public Permission {
        reasons = List.copyOf(reasons);
        if (allowed != reasons.isEmpty()) {
            throw new IllegalArgumentException("a refusal has reasons, a permission has none");
        }
    }

    /** Refused for these reasons, or allowed when there are none. */
    public static Permission unless(List<Reason> reasons) {
        return reasons.isEmpty() ? ALLOWED : new Permission(false, reasons);
    }

    public boolean refusedFor(ReasonCode code) {
        for (Reason reason : reasons) {
            if (reason.code() == code) {
                return true;
            }
        }
        return false;
    }
}
