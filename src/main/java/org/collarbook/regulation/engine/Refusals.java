package org.collarbook.regulation.engine;

import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.engine.Part.Allows;
import org.jspecify.annotations.Nullable;

/** Why each permission is refused, and what is told besides. */
final class Refusals {

    final Reasons fill = new Reasons();
    final Reasons carry = new Reasons();
    final Reasons use = new Reasons();
    private final Reasons told = new Reasons();

    void tell(@Nullable Reason reason) {
        if (reason != null) {
            told.add(reason);
        }
    }

    void refuse(Allows one, Reason reason) {
        of(one).add(reason);
    }

    void refuse(Set<Allows> these, Reason reason) {
        for (Allows one : Allows.values()) {
            if (these.contains(one)) {
                of(one).add(reason);
            }
        }
    }

    void refuse(Set<Allows> these, List<Reason> reasons) {
        for (int i = 0; i < reasons.size(); i++) {
            refuse(these, reasons.get(i));
        }
    }

    /** Refused for a fact that is not known, which is told once whatever rules ask for it. */
    void ask(Set<Allows> these, Reason missing) {
        for (Allows one : Allows.values()) {
            if (these.contains(one)) {
                of(one).addOnce(missing);
            }
        }
    }

    private Reasons of(Allows one) {
        return switch (one) {
            case FILL -> fill;
            case CARRY -> carry;
            case USE -> use;
        };
    }

    List<Reason> all(boolean usesDiffer) {
        Reasons all = new Reasons();
        all.addAll(fill);
        all.addAll(carry);
        if (usesDiffer) {
            all.addAll(use);
        }
        all.addAll(told);
        return all.list();
    }
}
