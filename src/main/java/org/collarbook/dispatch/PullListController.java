package org.collarbook.dispatch;

import java.time.LocalDate;
import java.time.YearMonth;

import org.collarbook.compliance.Citations;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Dispatch")
class PullListController {

    private final PullSites sites;
    private final PullRows rows;
    private final Citations citations;

    PullListController(PullSites sites, PullRows rows, Citations citations) {
        this.sites = sites;
        this.rows = rows;
        this.citations = citations;
    }

    @GetMapping(path = "/api/pull-list", produces = "application/json")
    @Operation(summary = "Containers that must come back: last day before the date, or out of service", description = """
            Name exactly one of `site` (code or id), `customer` (code or id) and `near` (latitude,longitude,kilometres). \
            `before=D` lists what has its last day before D; a last day equal to D is not listed.""")
    PullList pullList(@RequestParam(required = false) @Nullable String site,
            @RequestParam(required = false) @Nullable String customer,
            @RequestParam(required = false) @Nullable String near, @RequestParam LocalDate before) {
        var where = sites.in(PullArea.of(site, customer, near));
        var found = rows.before(before, where);
        if (found.size() > PullRows.MOST) {
            throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "LIST_TOO_LONG", "More than " + PullRows.MOST
                    + " containers must come back: ask for fewer sites or an earlier date, or export the schedule.")
                    .asException();
        }
        return PullList.of(before, found, row -> pulled(row, before), rows.undetermined(where));
    }

    private PullList.Pulled pulled(PullRow row, LocalDate before) {
        var due = row.due() == null ? null : YearMonth.from(row.due());
        return new PullList.Pulled(row.id(), row.kind(), row.specification(), row.maker(), row.serial(), row.size(),
                row.tag(), row.status(), row.requirement(), due, due == null ? null : due.atEndOfMonth(),
                why(row, due, before));
    }

    private PullList.Why why(PullRow row, @Nullable YearMonth due, LocalDate before) {
        var citation = citations.of(row.rule(), before);
        return switch (row.status()) {
            case "CONDEMNED", "REJECTED", "ON_HOLD", "OVERDUE", "USE_UP", "DUE_THIS_MONTH" -> {
                var code = ReasonCode.valueOf(row.status());
                yield new PullList.Why(code.name(), code.text(), row.rule(), citation);
            }
            default -> new PullList.Why("DUE_BEFORE", due == null
                    ? "It is due."
                    : "Its last day, " + due.atEndOfMonth() + ", lies before " + before + ".", row.rule(), citation);
        };
    }
}
