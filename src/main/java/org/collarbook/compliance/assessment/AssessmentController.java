package org.collarbook.compliance.assessment;

import java.time.Clock;
import java.time.LocalDate;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.RuleBook;
import org.springframework.http.CacheControl;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Compliance")
class AssessmentController {

    private final RuleBook rules;
    private final Clock clock;

    AssessmentController(RuleBook rules, Clock clock) {
        this.rules = rules;
        this.clock = clock;
    }

    @PostMapping(path = "/api/assessments", consumes = MediaType.APPLICATION_JSON_VALUE, produces = MediaType.APPLICATION_JSON_VALUE)
    @Operation(summary = "What do the rules say about these facts?", description = """
            Nothing is stored. A field that is absent or null is not known, and what is not known is never fine: the \
            answer names it as missing. `asOf` absent means today. A past `asOf` takes the rules then in force. With \
            `explain=true` the answer tells of every rule what became of it, condition by condition.""")
    ResponseEntity<AssessmentAnswer> assess(@RequestBody AssessmentRequest request,
            @RequestParam(defaultValue = "false") boolean explain) {
        var inputs = new Inputs();
        var reader = new FactsReader(inputs, LocalDate.now(clock), rules);
        var asOf = reader.day("/asOf", request.asOf());
        var facts = request.facts(reader, asOf);
        inputs.done();
        return ResponseEntity.ok().cacheControl(CacheControl.noStore())
                .body(AssessmentAnswer.of(facts, asOf == null ? LocalDate.now(clock) : asOf, rules, explain));
    }
}
