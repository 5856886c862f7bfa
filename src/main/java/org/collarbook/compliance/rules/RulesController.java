package org.collarbook.compliance.rules;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.function.Function;

import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.context.request.WebRequest;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping(path = "/api/rules", produces = "application/json")
@Tag(name = "Rules")
class RulesController {

    private final RuleBook rules;
    private final Clock clock;

    RulesController(RuleBook rules, Clock clock) {
        this.rules = rules;
        this.clock = clock;
    }

    @GetMapping
    @Operation(summary = "The rules, each with what it says today and where that stands", description = """
            `jurisdiction` takes a place with the rules that answer there, a province's and its country's; `basis` and \
            `on` look at the value in force today; `q` is looked for in ids and titles. Answers 304 to If-None-Match.""")
    @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match", content = @Content)
    @Nullable
    ResponseEntity<RuleList> list(@ParameterObject RuleFilter filter, WebRequest request) {
        return unlessKnown(request, today -> {
            var items = rules.rules().stream().filter(filter.over(rules.rules(), today))
                    .sorted(Comparator.comparing(RuleInfo::id)).map(rule -> RuleSummary.from(rule, today)).toList();
            return new RuleList(today, RuleBookAnswer.from(rules), items.size(), items);
        });
    }

    @GetMapping("/{id}")
    @Operation(summary = "One rule: what it applies to, its values by date with their citations, its examples")
    @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match", content = @Content)
    @Nullable
    ResponseEntity<WholeRule> one(@PathVariable String id, WebRequest request) {
        return unlessKnown(request,
                today -> rules.rules().stream().filter(rule -> rule.id().equals(id)).findFirst()
                        .map(rule -> WholeRule.from(rule, today, rules))
                        .orElseThrow(() -> Problem.notFound("rule").asException()));
    }

    @GetMapping("/coverage")
    @Operation(summary = "What the rule book holds, what is off and why, what is knowingly not held", description = """
            Read it before relying on an answer: a section that is not named is not held, and the answer to what it \
            would decide is UNDETERMINED or NO_RULE_HELD. Answers 304 to If-None-Match.""")
    @ApiResponse(responseCode = "200", useReturnTypeSchema = true)
    @ApiResponse(responseCode = "304", description = "Not changed since the ETag named in If-None-Match", content = @Content)
    @Nullable
    ResponseEntity<Coverage> coverage(WebRequest request) {
        return unlessKnown(request, today -> Coverage.of(rules, today));
    }

    /** The same book on the same day gives the same bytes, so the two of them are the tag. */
    private <T> @Nullable ResponseEntity<T> unlessKnown(WebRequest request, Function<LocalDate, T> answer) {
        var today = LocalDate.now(clock);
        var etag = "\"" + rules.hash() + "/" + rules.engineVersion() + "/" + today + "\"";
        var body = answer.apply(today);
        if (request.checkNotModified(etag)) {
            return null;
        }
        return ResponseEntity.ok().eTag(etag).cacheControl(CacheControl.noCache()).body(body);
    }
}
