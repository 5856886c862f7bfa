package org.collarbook.compliance.sites;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.custody.Places;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
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
class SiteRequirementsController {

    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2199;

    private final KnownSites sites;
    private final Places places;
    private final RuleBook rules;
    private final Clock clock;

    SiteRequirementsController(KnownSites sites, Places places, RuleBook rules, Clock clock) {
        this.sites = sites;
        this.places = places;
        this.rules = rules;
        this.clock = clock;
    }

    @GetMapping(path = "/api/sites/{id}/requirements", produces = "application/json")
    @Operation(summary = "Which fire extinguisher do the tanks at this site ask for, and is it there and kept up?", description = """
            Of the tanks and extinguishers that stand there now, judged on `asOf`, which is today at the site when it \
            is absent. `enable` names rules or bases that are off by default; a rule that is off and may ask for an \
            extinguisher gives `RULE_OFF`. `keptUp` and `suffices` are `UNKNOWN` where a fact is missing.""")
    ResponseEntity<SiteRequirementsAnswer> requirements(@PathVariable UUID id,
            @RequestParam(required = false) @Nullable LocalDate asOf,
            @RequestParam(required = false) @Nullable List<String> enable) {
        var inputs = new Inputs();
        if (asOf != null && (asOf.getYear() < FIRST_YEAR || asOf.getYear() > LAST_YEAR)) {
            inputs.refuse("asOf", "OUT_OF_RANGE", asOf.toString(), "a date from " + FIRST_YEAR + " to " + LAST_YEAR);
        }
        var enabled = enabled(enable == null ? List.of() : enable, inputs);
        inputs.done();
        var site = places.site(id).orElseThrow(() -> Problem.notFound("site").asException());
        var day = asOf == null ? LocalDate.now(clock.withZone(site.zone())) : asOf;
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(sites.requirements(site, enabled, day));
    }

    /** A typo must not pass for a switch that was thrown. */
    private Set<String> enabled(List<String> given, Inputs inputs) {
        given.stream().filter(name -> !rules.canEnable(name)).forEach(name -> inputs.refuse("enable", "UNKNOWN_RULE",
                name, "a rule's id, or one of " + Arrays.toString(Basis.values())));
        return Set.copyOf(given.stream().filter(rules::canEnable).toList());
    }
}
