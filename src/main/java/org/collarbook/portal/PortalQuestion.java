package org.collarbook.portal;

import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.ProblemException;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;

/** What a portal asks for, as query parameters; all are texts, so that everything that is wrong is told at once. */
record PortalQuestion(
        @Parameter(description = "id of a customer; asked of the staff, whose keys have none") @Nullable String customer,
        @Parameter(description = "id or code") @Nullable String site,
        @Parameter(schema = @Schema(implementation = Status.class)) @Nullable String status,
        @Parameter(description = "first due month, as YYYY-MM") @Nullable String dueFrom,
        @Parameter(description = "last due month, as YYYY-MM") @Nullable String dueTo,
        @Parameter(description = "which fields of an item, such as id,status,due; the id is always there") @Nullable String fields,
        @Parameter(description = "the Since-Token of an earlier answer: only what changed") @Nullable String since,
        @Parameter(description = "the `next` of the page before") @Nullable String cursor,
        @Parameter(description = "rows a page, 1 to 1000; 100 when absent") @Nullable String size) {

    private static final int LONGEST = 200;

    /** The question with nothing wrong in it. */
    record Read(CustomerId customer, PortalFilter filter, Fields fields, @Nullable String since, @Nullable UUID after,
            PageSize size) {}

    Read read(CustomerScope scope, Inputs wrong) {
        var whose = customer(scope, customer, wrong);
        var filter = filter(wrong);
        if (given(since) && !filter.isAll()) {
            wrong.refuse("since", "NOT_WITH_A_FILTER", since, "since alone: what changed is told of all containers");
        }
        var asked = Fields.read(fields, wrong);
        var after = after(cursor, wrong);
        var rows = rows(size, wrong);
        wrong.done();
        if (whose == null || asked == null || rows == null) {
            throw new IllegalStateException("a question was neither read nor refused");
        }
        return new Read(whose, filter, asked, given(since) ? since : null, after, rows);
    }

    private PortalFilter filter(Inputs wrong) {
        var from = month("dueFrom", dueFrom, wrong);
        var to = month("dueTo", dueTo, wrong);
        if (from != null && to != null && to.isBefore(from)) {
            wrong.refuse("dueTo", "OUT_OF_RANGE", dueTo, "a month not before dueFrom, " + from);
        }
        return new PortalFilter(wrong.optional("site", site, LONGEST), wrong.word("status", status, Status.class), from,
                to);
    }

    /** A portal's key has its customer; the staff names one. */
    static @Nullable CustomerId customer(CustomerScope scope, @Nullable String asked, Inputs wrong) {
        if (given(asked)) {
            try {
                return new CustomerId(UUID.fromString(asked.strip()));
            } catch (IllegalArgumentException notAnId) {
                wrong.refuse("customer", "WRONG_TYPE", asked, "the id of a customer");
                return null;
            }
        }
        return switch (scope) {
            case CustomerScope.Only(var own, var _) -> own;
            case CustomerScope.Everyone() -> {
                wrong.refuse("customer", "MISSING", null, "the id of a customer: this key is not confined to one");
                yield null;
            }
        };
    }

    private static boolean given(@Nullable String text) {
        return text != null && !text.isBlank();
    }

    private static @Nullable YearMonth month(String pointer, @Nullable String given, Inputs wrong) {
        if (!given(given)) {
            return null;
        }
        try {
            var month = YearMonth.parse(given.strip());
            if (month.getYear() >= 1900 && month.getYear() < 2200) {
                return month;
            }
        } catch (DateTimeException unreadable) {
            // told below, with what is accepted
        }
        wrong.refuse(pointer, "INVALID_MONTH", given, "a month as YYYY-MM, from 1900-01 to 2199-12");
        return null;
    }

    static @Nullable UUID after(@Nullable String cursor, Inputs wrong) {
        try {
            return Cursor.parseId(cursor);
        } catch (ProblemException forged) {
            wrong.refuse(forged.problem().errors());
            return null;
        }
    }

    static @Nullable PageSize rows(@Nullable String size, Inputs wrong) {
        try {
            return PageSize.of(given(size) ? Integer.valueOf(size.strip()) : null);
        } catch (NumberFormatException notANumber) {
            wrong.refuse("size", "WRONG_TYPE", size, "a whole number");
        } catch (ProblemException outOfRange) {
            wrong.refuse(outOfRange.problem().errors());
        }
        return null;
    }
}
