package org.collarbook.schedule;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.ProblemException;
import org.jspecify.annotations.Nullable;

/** Which page of a list, read together with the question, so that everything wrong with both is told at once. */
record PageAsked(PageSize size, @Nullable Cursor after) {

    static PageAsked read(@Nullable String size, @Nullable String cursor, CursorReader reader, Inputs wrong) {
        return new PageAsked(size(size, wrong), cursor(cursor, reader, wrong));
    }

    interface CursorReader {

        @Nullable
        Cursor read(@Nullable String text);
    }

    private static @Nullable Cursor cursor(@Nullable String cursor, CursorReader reader, Inputs wrong) {
        try {
            return reader.read(cursor);
        } catch (ProblemException forged) {
            wrong.refuse(forged.problem().errors());
            return null;
        }
    }

    private static PageSize size(@Nullable String given, Inputs wrong) {
        try {
            return PageSize.of(given == null || given.isBlank() ? null : Integer.valueOf(given.strip()));
        } catch (NumberFormatException notANumber) {
            wrong.refuse("size", "WRONG_TYPE", given, "a whole number");
        } catch (ProblemException outOfRange) {
            wrong.refuse(outOfRange.problem().errors());
        }
        return new PageSize(PageSize.DEFAULT);
    }
}
