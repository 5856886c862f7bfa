package org.collarbook.custody.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

/** Where a page of facts goes on, the latest first. */
record Before(Instant occurredAt, UUID id) {

    static @Nullable Before parse(@Nullable String text) {
        var cursor = Cursor.parse(text, 2);
        try {
            return cursor == null
                    ? null
                    : new Before(WrittenTime.moment(cursor.key().getFirst()), UUID.fromString(cursor.key().getLast()));
        } catch (DateTimeException | IllegalArgumentException foreign) {
            throw Cursor.refused(String.valueOf(text));
        }
    }
}
