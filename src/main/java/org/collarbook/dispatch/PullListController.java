package org.collarbook.dispatch;

import java.time.LocalDate;

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
        return new PullList.Pulled(row.id(), row.kind(), row.specification(), row.maker(), row.serial(), row.size(),
                row.tag(), row.status(), row.requirement(), row.jurisdiction(), row.dueMonth(), row.lastDay(),
                why(row, before));
    }

    private PullList.Why why(PullRow row, LocalDate before) {
        // the rule that is stored gave the clock as it runs now, not the word that it turns into
        var rule = row.leavesBeforeItIsDue() ? null : row.rule();
        var citation = citations.of(rule, before);
        return switch (row.status()) {
            case "CONDEMNED", "REJECTED", "ON_HOLD", "OVERDUE", "USE_UP", "DUE_THIS_MONTH" -> {
                var code = ReasonCode.valueOf(row.status());
                yield new PullList.Why(code.name(), code.text(), rule, citation);
            }
            default -> row.leavesBeforeItIsDue()
                    ? leaving(row)
                    : new PullList.Why("DUE_BEFORE", row.lastDay() == null
                            ? "It is due."
                            : "Its last day, " + row.lastDay() + ", lies before " + before + ".", rule, citation);
        };
    }

    private static PullList.Why leaving(PullRow row) {
        var code = ReasonCode.valueOf(String.valueOf(row.leavesAs()));
        return new PullList.Why(code.name(), "From " + row.leavesOn() + ": " + code.text(), null, null);
    }
}
