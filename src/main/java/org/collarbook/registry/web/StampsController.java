package org.collarbook.registry.web;

import java.time.Clock;
import java.time.LocalDate;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.stamps.CollarReading;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Register")
class StampsController {

    private final Clock clock;

    StampsController(Clock clock) {
        this.clock = clock;
    }

    @PostMapping(path = "/api/stamps/readings", consumes = MediaType.APPLICATION_JSON_VALUE, produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(summary = "What do these lines of a collar or data plate say?", description = """
            Nothing is stored. Each line is read for what it can be, in the light of the lines before it: the \
            specification decides the order of month and year, and the first bare month is that of the original test. \
            A line with several meanings answers them all, one without any says where it stopped making sense. A mark of \
            condemnation is looked for on every line before anything else, and the marks then say so. At most \
            100 lines of at most 200 characters.""")
    ResponseEntity<StampsAnswer> read(@RequestBody StampsRequest request) {
        var inputs = new Inputs();
        var lines = request.checked(inputs);
        var known = request.known(inputs, LocalDate.now(clock));
        inputs.done();
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(StampsAnswer.from(CollarReading.of(lines,
                known)));
    }
}
