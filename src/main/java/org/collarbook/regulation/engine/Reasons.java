package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.List;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;

/** Reasons in the order they were found, none told twice. What was not read is one object a text, so it is told apart by it. */
final class Reasons {

    private static final ArrayList<Reason> NONE = new ArrayList<>(0);

    private ArrayList<Reason> list = NONE;

    void add(ReasonCode code) {
        add(code.reason());
    }

    void add(Reason reason) {
        for (int i = 0, size = list.size(); i < size; i++) {
            Reason known = list.get(i);
            if (known == reason || known.code() == reason.code() && known.code() != ReasonCode.CURRENT_TEXT_NOT_READ
                    && known.equals(reason)) {
                return;
            }
        }
        if (list == NONE) {
            list = new ArrayList<>(8);
        }
        list.add(reason);
    }

    /** Unless one of the same code is there. */
    void addOnce(Reason reason) {
        for (int i = 0, size = list.size(); i < size; i++) {
            if (list.get(i).code() == reason.code()) {
                return;
            }
        }
        add(reason);
    }

    void addAll(List<Reason> reasons) {
        for (int i = 0, size = reasons.size(); i < size; i++) {
            add(reasons.get(i));
        }
    }

    void addAll(Reasons others) {
        if (list == NONE && others.list != NONE) {
            list = new ArrayList<>(others.list.size() + 4);
            list.addAll(others.list);
            return;
        }
        addAll(others.list);
    }

    /** Those that cannot be there yet. */
    void append(Reasons others) {
        if (others.list == NONE) {
            return;
        }
        if (list == NONE) {
            list = others.list;
        } else {
            list.addAll(others.list);
        }
    }

    /** The very same reasons in the same order. */
    boolean sameAs(Reasons other) {
        if (list.size() != other.list.size()) {
            return false;
        }
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i) != other.list.get(i)) {
                return false;
            }
        }
        return true;
    }

    List<Reason> list() {
        return list == NONE ? List.of() : list;
    }
}
