package org.collarbook.custody.routes.web;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;

import org.collarbook.custody.routes.Holidays;
import org.collarbook.custody.routes.Holidays.Holiday;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.DeleteMapping;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

import io.swagger.v3.oas.annotations.media.Schema;

@RestController
@RequestMapping(path = "/api/holidays", produces = "application/json")
@Tag(name = "Routes")
class HolidaysController {

    private static final int A_YEAR = 365;
    private static final int LONGEST_NAME = 200;

    private final Holidays holidays;
    private final Clock clock;

    HolidaysController(Holidays holidays, Clock clock) {
        this.holidays = holidays;
        this.clock = clock;
    }

    @Schema(requiredProperties = "name")
    record HolidayRequest(@Nullable String name) {}

    record HolidaysTold(LocalDate from, LocalDate to, List<Holiday> holidays) {}

    @GetMapping
    @Operation(summary = "Holidays from one day to another, both included: a year from today where nothing is told")
    HolidaysTold between(@RequestParam(required = false) @Nullable LocalDate from,
            @RequestParam(required = false) @Nullable LocalDate to) {
        var days = Days.read(from, to, LocalDate.now(clock), A_YEAR);
        return new HolidaysTold(days.from(), days.to(), holidays.between(days.from(), days.to()));
    }

    @PutMapping("/{day}")
    @Operation(summary = "Name a holiday, on which only routes are driven that say so", description = """
            It takes no `If-Match` and gives no route a new version.""")
    Holiday name(@PathVariable LocalDate day, @RequestBody HolidayRequest request) {
        var inputs = new Inputs();
        Days.isWithin("day", day, inputs);
        var name = inputs.required("/name", request.name, LONGEST_NAME);
        inputs.done();
        if (name == null) {
            throw new IllegalStateException("a name was neither read nor refused");
        }
        return holidays.name(day, name);
    }

    @ResponseStatus(HttpStatus.NO_CONTENT)
    @DeleteMapping("/{day}")
    @Operation(summary = "A day is no holiday after all")
    ResponseEntity<Void> drop(@PathVariable LocalDate day) {
        holidays.drop(day);
        return ResponseEntity.noContent().build();
    }
}
