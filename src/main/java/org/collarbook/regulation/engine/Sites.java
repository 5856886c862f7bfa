package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiFunction;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Considered.Answer;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.SiteAssessment;
import org.collarbook.regulation.SiteAssessment.Beside;
import org.collarbook.regulation.SiteAssessment.Outcome;
import org.collarbook.regulation.SiteExtinguisher;
import org.collarbook.regulation.SiteFacts;
import org.jspecify.annotations.Nullable;

/** Asks the rules that expect something beside a tank, over all tanks of a site and what stands beside them. */
final class Sites {

    private final List<Rule> expecting;
    private final Timeline timeline;
    private final BiFunction<Facts, LocalDate, Assessment> assess;

    Sites(List<Rule> rules, Timeline timeline, BiFunction<Facts, LocalDate, Assessment> assess) {
        this.expecting = rules.stream().filter(rule -> rule.part instanceof Part.Expects).toList();
        this.timeline = timeline;
        this.assess = assess;
    }

    SiteAssessment assess(SiteFacts site, LocalDate asOf) {
        Expectation expected = new Expectation();
        Jurisdiction where = site.jurisdiction();
        for (Facts tank : site.tanks()) {
            ContainerKind kind = tank.kind();
            if (kind == null || kind == ContainerKind.STATIONARY_TANK) {
                expected.ask(rules(where), new Subject(tank.toBuilder().enable(site.enable()).build(), asOf, timeline),
                        where);
            }
        }
        List<Beside> beside = new ArrayList<>();
        for (SiteExtinguisher one : site.extinguishers()) {
            beside.add(Upkeep.of(assess.apply(facts(one, site), asOf), one.ratingBC(), expected.atLeast(),
                    expected.citation()));
        }
        Outcome outcome = outcome(expected, beside);
        return new SiteAssessment(asOf, outcome, expected.ruleId(), expected.atLeast(), expected.citation(),
                expected.reasons.list(), beside);
    }

    private List<Rule> rules(@Nullable Jurisdiction where) {
        return expecting.stream().filter(rule -> where != null && where.isWithin(rule.head.jurisdiction())).toList();
    }

    private static Facts facts(SiteExtinguisher one, SiteFacts site) {
        return Facts.builder().jurisdiction(site.jurisdiction()).kind(ContainerKind.EXTINGUISHER)
                .extinguisher(one.type()).manufactured(one.manufactured()).requalifications(one.records())
                .holds(List.of()).enable(site.enable()).build();
    }

    private static Outcome outcome(Expectation expected, List<Beside> beside) {
        Citation citation = expected.citation();
        if (expected.isNothingAsked()) {
            expected.reasons.add(ReasonCode.NO_TANK_AT_SITE);
            return Outcome.NOT_REQUIRED;
        }
        Answer enough = citation == null ? null : best(beside);
        if (citation != null && enough != Answer.YES) {
            expected.reasons.add((beside.isEmpty() ? ReasonCode.NO_EXTINGUISHER : ReasonCode.NO_EXTINGUISHER_SUFFICES)
                    .citing(citation));
        }
        boolean required = expected.isRequired();
        if (required && enough == Answer.NO) {
            return Outcome.NOT_MET;
        }
        if (expected.isInDoubt() || required && enough == Answer.UNKNOWN) {
            return Outcome.UNDETERMINED;
        }
        if (expected.isOff() && (citation == null || expected.isRequirementOff())) {
            return Outcome.RULE_OFF;
        }
        return citation == null ? Outcome.NOT_REQUIRED : required ? Outcome.MET : Outcome.RECOMMENDED;
    }

    private static Answer best(List<Beside> beside) {
        Answer best = Answer.NO;
        for (Beside one : beside) {
            if (one.suffices() == Answer.YES) {
                return Answer.YES;
            }
            best = one.suffices() == Answer.UNKNOWN ? Answer.UNKNOWN : best;
        }
        return best;
    }
}
