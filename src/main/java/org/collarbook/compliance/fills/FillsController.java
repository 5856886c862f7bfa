package org.collarbook.compliance.fills;

import java.net.URI;
import java.time.Clock;

import org.collarbook.access.Caller;
import org.collarbook.platform.Idempotency;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Fills")
class FillsController {

    private final RecordFill recordFill;
    private final Idempotency idempotency;
    private final Clock clock;

    FillsController(RecordFill recordFill, Idempotency idempotency, Clock clock) {
        this.recordFill = recordFill;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping(path = "/api/fills", produces = "application/json")
    @Operation(summary = "Record a fill, topping off included", description = """
            Needs an `Idempotency-Key`. Judged on the day it was at the container's site, on all that is in it \
            afterwards: `grossLb` less the recorded tare, or `netAfterLb`, or `heelLb` and `gallonsAdded` (at 60 °F as a \
            compensating meter counts, unless `liquidTemperatureF` tells the temperature they were counted at). What the \
            fill check refuses is refused with `FILL_REFUSED`, what is more than may be in it with `OVER_LIMIT`, unless \
            it is reported as an `observedOverfill`: a fact, which puts a hold on the container. So does `leakFound` after a `leakChecked` fill: the fill is recorded, \
            and the container is held as leaking. `told` has what is to be said beside: a leak check that is not recorded \
            (from memory and common practice, not read in a text), or that the one it was `filledBy` has no training in \
            force on record, which is no refusal: an untrained person may fill under direct supervision.""")
    ResponseEntity<?> record(@RequestBody FillRequest request,
            @Parameter(required = true) @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key,
            Caller caller) {
        var command = request.toCommand(clock.instant());
        return idempotency.requireOnce(key, caller.id(), "POST /api/fills", request, () -> {
            var recorded = recordFill.record(command, caller);
            return ResponseEntity.created(URI.create("/api/containers/" + recorded.fill().containerId() + "/fills"))
                    .body(FillAnswer.from(recorded));
        });
    }
}
