package org.collarbook.holds.web;

import java.net.URI;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.access.Caller;
import org.collarbook.access.Role;
import org.collarbook.holds.Hold;
import org.collarbook.holds.Lifting;
import org.collarbook.holds.Lifting.Way;
import org.collarbook.holds.Lifts;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Holds")
class LiftsController {

    private final Lifts lifts;
    private final Idempotency idempotency;

    LiftsController(Lifts lifts, Idempotency idempotency) {
        this.lifts = lifts;
        this.idempotency = idempotency;
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping(path = "/api/holds/{id}/lifts", produces = "application/json")
    @Operation(summary = "Lift a hold by an inspection, by the office, or by naming the test that came after", description = """
            `COMPETENT_PERSON` asks for the `name` and `qualification` of whoever inspected the container, `CLERK` for a \
            `note`. A passed requalification of a later day lifts what it may when it is recorded. A sheet tells no hour, so \
            of a test of the hold's own day, and of any other that lifted nothing by itself, it is said here that it came \
            after: `REQUALIFICATION`, with its id as `requalification`.""")
    ResponseEntity<?> lift(@PathVariable UUID id, @RequestBody LiftRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var read = request.read();
        if (read.way() instanceof Way.Clerk && !caller.roles().contains(Role.CLERK)
                && !caller.roles().contains(Role.ADMINISTRATOR)) {
            throw Problem.of(HttpStatus.FORBIDDEN, "FORBIDDEN", "This key's roles do not lift a hold for the office:"
                    + " it takes clerk or administrator.").asException();
        }
        return idempotency.once(key, caller.id(), "POST /api/holds/" + id + "/lifts", request,
                () -> switch (lifts.lift(id, read.way(), read.note(), caller)) {
                    case Lifting.Lifted(var hold) -> ResponseEntity
                            .created(URI.create("/api/containers/" + hold.containerId() + "/holds"))
                            .body(response(hold));
                    case Lifting.AlreadyLifted(var hold) -> throw Problem.conflict("ALREADY_LIFTED",
                            "This hold is lifted already. Nothing was stored.").with("hold", response(hold))
                            .asException();
                    case Lifting.NotLiftedSo refused -> throw notLiftedSo(refused, read.way());
                    case Lifting.NotAnswered(var hold) -> throw Problem.conflict("NOT_ANSWERED_BY_TEST",
                            "That is no passed test of this container, of the day of the hold or later and not taken"
                                    + " back, that lifts " + hold.reason() + ". Nothing was stored.")
                            .with("hold", response(hold)).asException();
                    case Lifting.UnknownHold() -> throw Problem.notFound("hold").asException();
                });
    }

    private HoldResponse response(Hold hold) {
        return HoldResponse.from(hold, lifts.liftedBy(hold));
    }

    private static ProblemException notLiftedSo(Lifting.NotLiftedSo refused, Way way) {
        var would = refused.liftedBy().stream().sorted().toList();
        return Problem
                .conflict("NOT_LIFTED_SO", way.kind() + " does not lift " + refused.hold().reason() + ": it takes "
                        + would.stream().map(Enum::name).collect(Collectors.joining(" or ")) + ". Nothing was stored.")
                .with("liftedBy", would).asException();
    }
}
