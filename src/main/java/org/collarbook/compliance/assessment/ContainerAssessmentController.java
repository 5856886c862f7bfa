package org.collarbook.compliance.assessment;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.UUID;

import org.collarbook.compliance.AsKnown;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Problem;
import org.collarbook.platform.WrittenTime;
import org.collarbook.registry.Absorbed;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Compliance")
class ContainerAssessmentController {

    private final KnownContainers containers;
    private final Absorbed absorbed;
    private final Requirements requirements;
    private final RuleBook rules;
    private final AsKnown asKnown;
    private final Clock clock;

    ContainerAssessmentController(KnownContainers containers, Absorbed absorbed, Requirements requirements,
            RuleBook rules,
            AsKnown asKnown, Clock clock) {
        this.absorbed = absorbed;
        this.asKnown = asKnown;
        this.clock = clock;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    @GetMapping(path = "/api/containers/{id}/assessment", produces = "application/json")
    @Operation(summary = "What do the rules say about this container of the register?", description = """
            Today and by all that is known, or as asked: `on` is the day asked about, `knownAt` the moment of whose \
            knowledge the answer is to be. It then rests on what was recorded by that moment and on the rule book that \
            the register held, with what was then switched on in it; the site is the version that was then known. \
            `replayed` tells the moment and whether another version of the evaluator answers now. With \
            `explain=true` the answer tells of every rule what became of it, condition by condition. \
            `declared` names the facts that rest on a declaration, with by whom and when.""")
    ResponseEntity<AssessmentAnswer> assess(@PathVariable UUID id,
            @RequestParam(defaultValue = "false") boolean explain,
            @RequestParam(required = false) @Nullable String on,
            @RequestParam(required = false) @Nullable String knownAt) {
        if (knownAt == null) {
            absorbed.refuse(id);
        }
        var known = containers.byId(id).orElse(null);
        if (known != null && on == null && knownAt == null) {
            return answer(AssessmentAnswer.of(known.facts(), requirements.today(known), rules, explain)
                    .resting(known));
        }
        // a record that is closed now was not always
        if (known == null && absorbed.into(id).isEmpty()) {
            throw Problem.notFound("container").asException();
        }
        var today = known == null ? LocalDate.now(clock.withZone(ZoneOffset.UTC)) : requirements.today(known);
        var inputs = new Inputs();
        var day = day(inputs, on, today);
        var moment = moment(inputs, knownAt);
        inputs.done();
        var then = asKnown.container(id, day, moment).orElseThrow(() -> Problem.of(HttpStatus.NOT_FOUND, "NOT_FOUND",
                "This container was not registered by " + moment + ", or had been merged into another.").asException());
        var book = asKnown.book(moment);
        return answer(AssessmentAnswer.of(then.facts(), day, book.rules(), explain)
                .replayed(moment, book.evaluator()).resting(then));
    }

    private static ResponseEntity<AssessmentAnswer> answer(AssessmentAnswer body) {
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(body);
    }

    private static LocalDate day(Inputs inputs, @Nullable String text, LocalDate today) {
        try {
            return text == null ? today : WrittenTime.day(text);
        } catch (DateTimeParseException unreadable) {
            inputs.refuse("on", "INVALID_DATE", text, "a date such as 2026-11-25");
            return today;
        }
    }

    private Instant moment(Inputs inputs, @Nullable String text) {
        var now = clock.instant();
        try {
            var moment = text == null ? now : WrittenTime.moment(text);
            if (!moment.isAfter(now)) {
                return moment;
            }
            inputs.refuse("knownAt", "IN_THE_FUTURE", text, "a moment that has passed");
        } catch (DateTimeParseException unreadable) {
            inputs.refuse("knownAt", "INVALID_TIME", text, "a moment such as 2026-11-25T14:00:00Z");
        }
        return now;
    }
}
