package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.Caution;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Compliance")
class FillCheckController {

    /** More containers than this with one serial number are not told apart in one answer. */
    private static final int MOST_CANDIDATES = 20;

    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;

    FillCheckController(KnownContainers containers, Requirements requirements, RuleBook rules) {
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    @GetMapping(path = "/api/fill-check", produces = "application/json")
    @Operation(summary = "May this container be filled now, and to what weight?", description = """
            Name the container by `tag`, or by `serial` and as much of `specification` and `maker` as was read. The \
            answer is yes only when every clock, mark and permission allows it; it carries all reasons with their \
            citations. Without `specificGravity` (of the liquid at 60 °F) no maximum weight is given.""")
    ResponseEntity<FillCheckAnswer> check(@RequestParam(required = false) @Nullable String tag,
            @RequestParam(required = false) @Nullable String serial,
            @RequestParam(required = false) @Nullable String specification,
            @RequestParam(required = false) @Nullable String maker,
            @RequestParam(required = false) @Nullable BigDecimal specificGravity) {
        var query = FillCheckQuery.of(tag, serial, specification, maker, specificGravity);
        var known = one(found(query));
        var today = requirements.today(known);
        return ResponseEntity.ok().cacheControl(CacheControl.noStore())
                .body(FillCheckAnswer.from(known, rules.assess(known.facts(), today),
                        rules.fillingLimit(known.facts(), specificGravity, today), specificGravity));
    }

    private List<KnownContainer> found(FillCheckQuery query) {
        if (query.tag() != null) {
            return containers.byTag(query.tag()).stream().toList();
        }
        var serial = query.serial();
        if (serial == null) {
            throw new IllegalStateException("a query names a tag or a serial");
        }
        var maker = query.maker();
        return containers.bySerial(serial, query.specification(), MOST_CANDIDATES).stream()
                .filter(known -> maker == null || maker.equals(known.container().marks().maker())).toList();
    }

    private static KnownContainer one(List<KnownContainer> found) {
        if (found.isEmpty()) {
            throw Problem.of(HttpStatus.NOT_FOUND, "NOT_FOUND",
                    "Do not fill: no container in the register bears these marks. " + Caution.TEXT).asException();
        }
        if (found.size() > 1) {
            throw Problem.conflict("MORE_THAN_ONE", "Do not fill yet: " + found.size() + " containers match. Read the"
                    + " specification, the maker's symbol and the month of manufacture off the collar, or scan the tag.")
                    .with("candidates", found.stream().map(Candidate::from).toList()).asException();
        }
        return found.getFirst();
    }
}
