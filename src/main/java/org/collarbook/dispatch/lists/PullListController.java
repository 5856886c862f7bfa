package org.collarbook.dispatch.lists;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@Tag(name = "Dispatch")
class PullListController {

    private final PullLists lists;
    private final PullListPdf pdf;
    private final PullListCalendar calendar;

    PullListController(PullLists lists, PullListPdf pdf, PullListCalendar calendar) {
        this.lists = lists;
        this.pdf = pdf;
        this.calendar = calendar;
    }

    @GetMapping(path = "/api/routes/{id}/pull-list", produces = "application/json")
    @Operation(summary = "What a route must bring back, stop by stop", description = """
            `id` is the route's id or code; `visit` one of its days, the next one from today on when absent. At each stop \
            a container is listed that is overdue or out of service, or whose last day lies before the day on which \
            somebody is next there after this visit, by whatever route; a last day equal to that day is not listed. Where \
            no later visit is known, every container with a due month is listed.""")
    PullList ofRoute(@PathVariable String id, @RequestParam(required = false) @Nullable LocalDate visit) {
        var wrong = new Inputs();
        PullQuestion.refuseFarOff(wrong, "visit", visit);
        wrong.done();
        return lists.ofRoute(id, visit);
    }

    @GetMapping(path = "/api/routes/{id}/pull-list", produces = "text/csv")
    @Operation(summary = "The same as CSV, a row for each container (also by ?format=csv)")
    ResponseEntity<String> ofRouteAsCsv(@PathVariable String id,
            @RequestParam(required = false) @Nullable LocalDate visit) {
        return csv(ofRoute(id, visit));
    }

    @GetMapping(path = "/api/routes/{id}/pull-list", produces = "application/pdf")
    @Operation(summary = "The same to print, with a code to scan for each container (also by ?format=pdf)")
    void ofRouteAsPdf(@PathVariable String id, @RequestParam(required = false) @Nullable LocalDate visit,
            HttpServletResponse response) throws IOException {
        pdf(ofRoute(id, visit), response);
    }

    @GetMapping(path = "/api/routes/{id}/pull-list", produces = "text/calendar")
    @Operation(summary = "The visit as a calendar file (RFC 5545; also by ?format=ics)")
    void ofRouteAsCalendar(@PathVariable String id, @RequestParam(required = false) @Nullable LocalDate visit,
            HttpServletResponse response) throws IOException {
        calendar(ofRoute(id, visit), response);
    }

    @GetMapping(path = "/api/pull-list", produces = "application/json")
    @Operation(summary = "What must come back from a site, a customer, an area or the routes of a depot", description = """
            Name exactly one of `site`, `customer`, `depot` (code or id) and `near` (latitude,longitude,kilometres). \
            `before=D` lists what has its last day before D; a last day equal to D is not listed. Without it each site's \
            next visit and the one after decide. `visit=D` goes with `depot`: its routes that are driven on D.""")
    PullList ofArea(@ParameterObject PullQuestion question) {
        return lists.answer(question);
    }

    @GetMapping(path = "/api/pull-list", produces = "text/csv")
    @Operation(summary = "The same as CSV, a row for each container (also by ?format=csv)")
    ResponseEntity<String> ofAreaAsCsv(@ParameterObject PullQuestion question) {
        return csv(ofArea(question));
    }

    @GetMapping(path = "/api/pull-list", produces = "application/pdf")
    @Operation(summary = "The same to print, with a code to scan for each container (also by ?format=pdf)")
    void ofAreaAsPdf(@ParameterObject PullQuestion question, HttpServletResponse response) throws IOException {
        pdf(ofArea(question), response);
    }

    @GetMapping(path = "/api/pull-list", produces = "text/calendar")
    @Operation(summary = "The visits as a calendar file (RFC 5545; also by ?format=ics)")
    void ofAreaAsCalendar(@ParameterObject PullQuestion question, HttpServletResponse response) throws IOException {
        calendar(ofArea(question), response);
    }

    private void pdf(PullList list, HttpServletResponse response) throws IOException {
        pdf.write(list, as("application/pdf", "pull-list.pdf", response));
    }

    private void calendar(PullList list, HttpServletResponse response) throws IOException {
        calendar.write(list, as("text/calendar;charset=UTF-8", "pull-list.ics", response));
    }

    private static OutputStream as(String type, String name, HttpServletResponse response) throws IOException {
        response.setContentType(type);
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + name + "\"");
        return response.getOutputStream();
    }

    private static ResponseEntity<String> csv(PullList list) {
        return ResponseEntity.ok().header(HttpHeaders.CONTENT_TYPE, "text/csv;charset=UTF-8")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"pull-list.csv\"")
                .body(PullListCsv.of(list));
    }
}
