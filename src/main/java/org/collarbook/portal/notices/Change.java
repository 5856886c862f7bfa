package org.collarbook.portal.notices;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A container of a customer who is told of changes: how it was last seen, and how it is now; null where it is not theirs. */
record Change(UUID container, @Nullable Seen before, @Nullable Seen after) {

    /** Where it stood, and in what state, as far as notices tell states apart. */
    record Seen(UUID customer, UUID site, Word word) {}

    enum Word {
        IN_SERVICE,
        /** On hold or rejected. */
        HELD,
        CONDEMNED
    }

    /** What is told to whom, in this order; {@code previousSite} is one of that customer's. */
    record Told(UUID customer, NoticeType type, @Nullable UUID previousSite) {}

    List<Told> told() {
        var told = new ArrayList<Told>(3);
        boolean same = before != null && after != null && before.customer.equals(after.customer);
        if (before != null && !same) {
            told.add(new Told(before.customer, NoticeType.LEFT, before.site));
        }
        if (after == null) {
            return told;
        }
        if (before == null || !same) {
            told.add(new Told(after.customer, NoticeType.ARRIVED, null));
            become(Word.IN_SERVICE, after, told);
        } else {
            if (!before.site.equals(after.site)) {
                told.add(new Told(after.customer, NoticeType.MOVED, before.site));
            }
            become(before.word, after, told);
        }
        return told;
    }

    private static void become(Word was, Seen now, List<Told> told) {
        if (was == now.word) {
            return;
        }
        if (was == Word.CONDEMNED) {
            told.add(new Told(now.customer, NoticeType.REINSTATED, null));
        }
        switch (now.word) {
            case CONDEMNED -> told.add(new Told(now.customer, NoticeType.CONDEMNED, null));
            case HELD -> told.add(new Told(now.customer, NoticeType.HELD, null));
            case IN_SERVICE -> {
                if (was == Word.HELD) {
                    told.add(new Told(now.customer, NoticeType.RELEASED, null));
                }
            }
        }
    }
}
