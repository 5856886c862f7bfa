package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.compliance.MissingFacts;
import org.collarbook.dispatch.lists.PullList.Why;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Dispatch")
class PlaceUnknownController {

    private final PlaceUnknownRows rows;
    private final PullReasons reasons;

    PlaceUnknownController(PlaceUnknownRows rows, PullReasons reasons) {
        this.rows = rows;
        this.reasons = reasons;
    }

    /** A container that must come back from nobody knows where. */
    record Unplaced(UUID id, String kind, String specification, @Nullable String maker, String serial,
            @Nullable YearMonth manufactured, String size, @Nullable String tag, String status, String requirement,
            @Nullable String jurisdiction, @Nullable YearMonth due, @Nullable LocalDate lastDay, Why reason) {

        static Unplaced from(PullRow row, Why reason) {
            return new Unplaced(row.id(), row.kind().name(), row.specification(), row.maker(), row.serial(),
                    row.manufactured(), row.size(), row.tag(), row.status().name(), row.requirement(),
                    row.jurisdiction(), row.due(), row.lastDay(), reason);
        }
    }

    @GetMapping(path = "/api/pull-list/place-unknown", produces = "application/json")
    @Operation(summary = "What must come back and stands nobody knows where", description = """
            Containers without a recorded place that are overdue or out of service (held as lost included), or whose last \
            day lies before `before`, in pages: those out of service first, then by their last day; at the end those whose \
            month cannot be told, for want of a place or of anything else.""")
    Page<Unplaced> placeUnknown(@RequestParam LocalDate before, @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var wrong = new Inputs();
        PullQuestion.refuseFarOff(wrong, "before", before);
        wrong.done();
        var asked = PageSize.of(size);
        var today = rows.today();
        return Page.of(rows.before(before, today, cursor, asked), asked,
                one -> Cursor.after(one.outFrom(), one.row().id()))
                .map(page -> page.stream().map(PlaceUnknownRows.Found::row)
                        .map(row -> Unplaced.from(row, why(row, before, today))).toList());
    }

    private Why why(PullRow row, LocalDate before, LocalDate today) {
        return row.undetermined()
                ? new Why("UNDETERMINED", String.join(" ", MissingFacts.of(row.reasons())), null, null)
                : reasons.why(row, new Until.Asked(before), today);
    }
}
