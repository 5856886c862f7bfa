package org.collarbook.portal;

import java.time.YearMonth;

import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** Which of the containers are asked for; {@code site} by its id or code. What is null leaves that side open. */
record PortalFilter(@Nullable String site, @Nullable Status status, @Nullable YearMonth dueFrom,
        @Nullable YearMonth dueTo) {

    static final PortalFilter ALL = new PortalFilter(null, null, null, null);

    boolean isAll() {
        return equals(ALL);
    }
}
