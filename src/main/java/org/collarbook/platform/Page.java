package org.collarbook.platform;

import java.util.List;
import java.util.function.Function;

import org.jspecify.annotations.Nullable;

/** One page of a list and where the next begins; {@code next} is null on the last page. */
public record Page<T>(List<T> items, @Nullable String next) {

    /** Cuts a read of {@link PageSize#limit} rows down to the page. */
    public static <T> Page<T> of(List<T> read, PageSize size, Function<T, Cursor> cursor) {
        if (read.size() <= size.rows()) {
            return new Page<>(read, null);
        }
        var rows = List.copyOf(read.subList(0, size.rows()));
        return new Page<>(rows, cursor.apply(rows.getLast()).toString());
    }

    public <R> Page<R> map(Function<List<T>, List<R>> rows) {
        return new Page<>(rows.apply(items), next);
    }
}
