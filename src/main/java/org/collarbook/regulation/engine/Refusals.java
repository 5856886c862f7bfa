package org.collarbook.regulation.engine;

import java.util.List;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.engine.Part.Allows;
import org.jspecify.annotations.Nullable;

/** Why each permission is refused, and what is told besides; permissions are named by their bits. */
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

    void tellAll(Reason[] distinct) {
        if (distinct.length > 0) {
            told.addDistinct(distinct);
        }
    }

    void refuse(int these, Reason reason) {
        if ((these & Allows.FILL.bit) != 0) {
            fill.add(reason);
        }
        if ((these & Allows.CARRY.bit) != 0) {
            carry.add(reason);
        }
        if ((these & Allows.USE.bit) != 0) {
            use.add(reason);
        }
    }

    void refuse(int these, List<Reason> reasons) {
        for (int i = 0; i < reasons.size(); i++) {
            refuse(these, reasons.get(i));
        }
    }

    /** Everything refused for a recorded fact, with its citation where a rule has told it already. */
    void refuseOnce(ReasonCode code) {
        for (Reasons refused : List.of(fill, carry, use)) {
            if (!refused.has(code)) {
                refused.add(code);
            }
        }
    }

    /** Refused for a fact that is not known, which is told once whatever rules ask for it. */
    void ask(int these, Reason missing) {
        if ((these & Allows.FILL.bit) != 0) {
            fill.addOnce(missing);
        }
        if ((these & Allows.CARRY.bit) != 0) {
            carry.addOnce(missing);
        }
        if ((these & Allows.USE.bit) != 0) {
            use.addOnce(missing);
        }
    }

    List<Reason> all(boolean usesDiffer) {
        Reasons all = new Reasons();
        all.addAll(fill);
        all.addAll(carry);
        if (usesDiffer) {
            all.addAll(use);
        }
        all.append(told);
        return all.list();
    }
}
