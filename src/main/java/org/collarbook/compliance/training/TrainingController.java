package org.collarbook.compliance.training;

import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Cursor;
import org.collarbook.platform.Idempotency;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.WrittenTime;
import org.collarbook.regulation.Retention;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.ResponseStatus;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/training", produces = "application/json")
@Tag(name = "Training")
class TrainingController {

    private final Trainings trainings;
    private final Retention retention;
    private final Idempotency idempotency;
    private final Clock clock;

    TrainingController(Trainings trainings, Retention retention, Idempotency idempotency, Clock clock) {
        this.trainings = trainings;
        this.retention = retention;
        this.idempotency = idempotency;
        this.clock = clock;
    }

    /** {@code kept} says for how long. */
    record TrainingResponse(UUID id, String person, Training.Kind kind, LocalDate trainedOn, LocalDate expires,
            String providedBy, @Nullable String materials, String certifiedBy, String kept, Instant recordedAt) {

        static TrainingResponse from(Training training, String kept) {
            var done = training.done();
            return new TrainingResponse(training.id(), done.person(), done.kind(), done.trainedOn(), done.expires(),
                    done.providedBy(), done.materials(), done.certifiedBy(), kept, training.recordedAt());
        }
    }

    @ResponseStatus(HttpStatus.CREATED)
    @PostMapping
    @Operation(summary = "Record a training that a person has completed", description = """
            `expires` is three years later when absent, and never later than that, 49 CFR 172.704(c)(2). A fill that \
            names this person as `filledBy` is told where no training in FILLING or FUNCTION_SPECIFIC was in force.""")
    ResponseEntity<?> record(@RequestBody TrainingRequest request,
            @RequestHeader(name = "Idempotency-Key", required = false) @Nullable String key, Caller caller) {
        var done = request.read(LocalDate.now(clock.withZone(ZoneOffset.ofHours(14))));
        return idempotency.once(key, caller.id(), "POST /api/training", request, () -> ResponseEntity
                .created(URI.create("/api/training")).body(response(trainings.record(done, caller))));
    }

    @GetMapping
    @Operation(summary = "Trainings by the day on which they expire", description = """
            `expiringBefore` leaves those that expire before that day and have not been repeated since.""")
    Page<TrainingResponse> list(@RequestParam(required = false) @Nullable String person,
            @RequestParam(required = false) @Nullable LocalDate expiringBefore,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var rows = PageSize.of(size);
        var at = Cursor.parse(cursor, 2);
        return Page.of(trainings.list(person, expiringBefore, at == null ? null : day(at, cursor),
                at == null ? null : id(at, cursor), rows), rows,
                one -> Cursor.after(one.done().expires(), one.id()))
                .map(page -> page.stream().map(this::response).toList());
    }

    private static LocalDate day(Cursor cursor, @Nullable String text) {
        try {
            return WrittenTime.day(cursor.key().getFirst());
        } catch (java.time.DateTimeException foreign) {
            throw Cursor.refused(String.valueOf(text));
        }
    }

    private static UUID id(Cursor cursor, @Nullable String text) {
        try {
            return UUID.fromString(cursor.key().getLast());
        } catch (IllegalArgumentException foreign) {
            throw Cursor.refused(String.valueOf(text));
        }
    }

    private TrainingResponse response(Training training) {
        return TrainingResponse.from(training, retention.of(Retention.RecordKind.TRAINING).until());
    }
}
