package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.List;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;

/** Reasons in the order they were found, none told twice. */
final class Reasons {

    private final ArrayList<Reason> list = new ArrayList<>(8);

    void add(ReasonCode code) {
        add(code.reason());
    }

    void add(Reason reason) {
        for (int i = 0; i < list.size(); i++) {
            Reason known = list.get(i);
            if (known == reason || known.code() == reason.code() && known.equals(reason)) {
                return;
            }
        }
        list.add(reason);
    }

    void addAll(List<Reason> reasons) {
        for (int i = 0; i < reasons.size(); i++) {
            add(reasons.get(i));
        }
    }

    boolean isEmpty() {
        return list.isEmpty();
    }

    List<Reason> list() {
        return list;
    }
}
