package org.collarbook.compliance.assessment;

import java.util.UUID;

import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.RuleBook;
import org.springframework.http.CacheControl;
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
    private final Requirements requirements;
    private final RuleBook rules;

    ContainerAssessmentController(KnownContainers containers, Requirements requirements, RuleBook rules) {
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    @GetMapping(path = "/api/containers/{id}/assessment", produces = "application/json")
    @Operation(summary = "What do the rules say today about this container of the register?", description = """
            With `explain=true` the answer tells of every rule what became of it, condition by condition.""")
    ResponseEntity<AssessmentAnswer> assess(@PathVariable UUID id,
            @RequestParam(defaultValue = "false") boolean explain) {
        var known = containers.byId(id).orElseThrow(() -> Problem.notFound("container").asException());
        return ResponseEntity.ok().cacheControl(CacheControl.noStore())
                .body(AssessmentAnswer.of(known.facts(), requirements.today(known), rules, explain));
    }
}
