package org.collarbook.inspection.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

/** Where a list that is sorted by day and id, the newest first, goes on. */
record DayCursor(LocalDate day, UUID id) {

    static @Nullable DayCursor parse(@Nullable String text) {
        var cursor = Cursor.parse(text, 2);
        try {
            return cursor == null
                    ? null
                    : new DayCursor(WrittenTime.day(cursor.key().getFirst()),
                            UUID.fromString(cursor.key().getLast()));
        } catch (DateTimeException | IllegalArgumentException foreign) {
            throw Cursor.refused(String.valueOf(text));
        }
    }
}
