package org.collarbook.platform;

import org.jspecify.annotations.Nullable;

/** How many rows a page may have. */
public record PageSize(int rows) {

    public static final int DEFAULT = 100;
    public static final int MOST = 1000;

    public static PageSize of(@Nullable Integer asked) {
        if (asked == null) {
            return new PageSize(DEFAULT);
        }
        if (asked < 1 || asked > MOST) {
            throw Problem.invalid("size", "OUT_OF_RANGE", String.valueOf(asked), "1 to " + MOST + " rows a page")
                    .asException();
        }
        return new PageSize(asked);
    }

    /** One more than the page holds, to learn whether another follows. */
    public int limit() {
        return rows + 1;
    }
}
