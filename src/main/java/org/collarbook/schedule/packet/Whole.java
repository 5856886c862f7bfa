package org.collarbook.schedule.packet;

import java.util.List;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.springframework.http.HttpStatus;

/** A list as a whole or not at all: a packet that leaves something out without a word proves nothing. */
final class Whole {

    private Whole() {}

    /** Refuses by problem more than a page holds; {@code endpoint} is where they are read by pages. */
    static <T> List<T> list(String what, UUID container, String endpoint, Function<PageSize, List<T>> read) {
        var found = read.apply(PageSize.of(PageSize.MOST));
        return first(what, container, endpoint, found, found.size() > PageSize.MOST);
    }

    /** The same of what comes by pages already. */
    static <T> List<T> page(String what, UUID container, String endpoint, Function<PageSize, Page<T>> read) {
        var page = read.apply(PageSize.of(PageSize.MOST));
        return first(what, container, endpoint, page.items(), page.next() != null);
    }

    private static <T> List<T> first(String what, UUID container, String endpoint, List<T> found, boolean more) {
        if (more) {
            throw tooLong(
                    "More than " + PageSize.MOST + " entries tell of " + what + ": no packet is made. Read them by"
                            + " pages at /api/containers/" + container + "/" + endpoint + ".");
        }
        return found;
    }

    static RuntimeException tooLong(String detail) {
        return Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "LIST_TOO_LONG", detail).asException();
    }
}
