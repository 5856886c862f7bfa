package org.collarbook.regulation.engine;

import java.util.Arrays;
import java.util.List;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;

/**
 * Reasons in the order they were found, none told twice. What was not read is one object a text, so it is told apart by
 * it.
 */
final class Reasons {

    private static final Reason[] NONE = {};

    private Reason[] reasons = NONE;
    private int size;

    void add(ReasonCode code) {
        add(code.reason());
    }

    void add(Reason reason) {
        for (int i = 0; i < size; i++) {
            Reason known = reasons[i];
            if (known == reason || known.code() == reason.code() && known.code() != ReasonCode.CURRENT_TEXT_NOT_READ
                    && known.equals(reason)) {
                return;
            }
        }
        put(reason);
    }

    /** Unless one of the same code is there. */
    void addOnce(Reason reason) {
        if (!has(reason.code())) {
            put(reason);
        }
    }

    boolean has(ReasonCode code) {
        for (int i = 0; i < size; i++) {
            if (reasons[i].code() == code) {
                return true;
            }
        }
        return false;
    }

    private void put(Reason reason) {
        if (size == reasons.length) {
            reasons = Arrays.copyOf(reasons, size == 0 ? 4 : 3 * size);
        }
        reasons[size++] = reason;
    }

    /** Several that differ from each other, such as are told of every container of a plan. */
    void addDistinct(Reason[] others) {
        int before = size;
        if (reasons.length < size + others.length) {
            reasons = Arrays.copyOf(reasons, size + others.length + 2);
        }
        for (Reason reason : others) {
            if (!holds(reason, before)) {
                reasons[size++] = reason;
            }
        }
    }

    private boolean holds(Reason reason, int among) {
        for (int i = 0; i < among; i++) {
            if (reasons[i] == reason) {
                return true;
            }
        }
        return false;
    }

    void addAll(Reasons others) {
        for (int i = 0; i < others.size; i++) {
            add(others.reasons[i]);
        }
    }

    /** Those that cannot be there yet. */
    void append(Reasons others) {
        if (others.size == 0) {
            return;
        }
        reasons = Arrays.copyOf(reasons, size + others.size);
        System.arraycopy(others.reasons, 0, reasons, size, others.size);
        size += others.size;
    }

    /** The very same reasons in the same order. */
    boolean sameAs(Reasons other) {
        if (size != other.size) {
            return false;
        }
        for (int i = 0; i < size; i++) {
            if (reasons[i] != other.reasons[i]) {
                return false;
            }
        }
        return true;
    }

    boolean isEmpty() {
        return size == 0;
    }

    List<Reason> list() {
        return switch (size) {
            case 0 -> List.of();
            case 1 -> List.of(reasons[0]);
            case 2 -> List.of(reasons[0], reasons[1]);
            default -> List.of(size == reasons.length ? reasons : Arrays.copyOf(reasons, size));
        };
    }
}
