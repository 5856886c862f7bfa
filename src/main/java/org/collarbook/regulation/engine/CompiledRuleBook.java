package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Considered;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.NotHeld;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.SiteAssessment;
import org.collarbook.regulation.SiteFacts;
import org.jspecify.annotations.Nullable;

/** The rule book that the loader compiles. */
public final class CompiledRuleBook implements RuleBook {

    private static final String ENGINE = "4";
    private static final String WITH = " with ";

    private final List<Rule> rules;
    private final Regimes regimes;
    private final Timeline timeline;
    private final Sites sites;
    private final Listing listing;
    private final String hash;
    private final String canonicalText;
    private final String engineVersion;

    /** What the book shows of itself. */
    public record Listing(List<RuleInfo> rules, List<NotHeld> notHeld) {}

    public CompiledRuleBook(List<Rule> rules, Listing listing, String hash, String canonicalText,
            Set<String> enabled) {
        this.engineVersion = enabled.isEmpty() ? ENGINE : ENGINE + WITH + String.join(", ", new TreeSet<>(enabled));
        this.rules = List.copyOf(rules);
        this.listing = listing;
        this.hash = hash;
        this.canonicalText = canonicalText;
        TreeSet<LocalDate> days = new TreeSet<>();
        rules.forEach(rule -> Arrays.stream(rule.values).forEach(value -> {
            days.add(value.from);
            if (value.until != null) {
                days.add(value.until);
            }
            if (value.unreadSince != null) {
                days.add(value.unreadSince);
            }
        }));
        timeline = new Timeline(days.toArray(LocalDate[]::new));
        rules.forEach(rule -> rule.layOut(timeline.switches()));
        regimes = new Regimes(rules);
        sites = new Sites(rules, timeline, this::assess);
    }

    @Override
    public Assessment assess(Facts facts, LocalDate asOf) {
        Subject subject = new Subject(facts, asOf, timeline);
        Permissions permissions = new Permissions(subject);
        Plan own = plan(facts, facts.jurisdiction());
        if (own == Plan.NO_RULES) {
            unplanned(facts, permissions);
        } else {
            ask(own, facts.jurisdiction(), permissions);
        }
        Jurisdiction second = Regimes.second(facts);
        if (second != null && facts.kind() != null) {
            ask(plan(facts, second), second, permissions);
        } else if (own != Plan.NO_RULES && Regimes.mayBeMarkedElsewhere(facts)) {
            permissions.undetermined(ReasonCode.MISSING_SPECIFICATION, own, null);
        }
        new Standing(permissions, subject, own).count();
        return permissions.answer(own);
    }

    private void ask(Plan plan, @Nullable Jurisdiction where, Permissions permissions) {
        Subject subject = permissions.subject;
        if (subject.facts.specification() == null && regimes.askForTheSpecification(subject.facts, where)) {
            permissions.undetermined(ReasonCode.MISSING_SPECIFICATION, plan, where);
        } else if (plan.groups.length == 0) {
            permissions.undetermined(ReasonCode.NO_RULE_HELD, plan, where);
        } else {
            boolean runs = false;
            for (Plan.Group group : plan.groups) {
                runs |= permissions.count(Clocks.read(group, subject, subject.asOf), group, plan, where)
                        && group.requirement().isOfTheContainer();
            }
            if (!runs) {
                // rules that are switched off, or clocks of parts alone: nothing says that nothing is due
                permissions.undetermined(ReasonCode.NO_RULE_HELD, plan, where);
            }
        }
        new Gates(subject, permissions.refusals).ask(plan.questions(subject));
    }

    private void unplanned(Facts facts, Permissions permissions) {
        Jurisdiction where = facts.jurisdiction();
        if (where == null) {
            permissions.undetermined(ReasonCode.MISSING_JURISDICTION, Plan.NO_RULES, null);
        }
        if (facts.kind() == null) {
            permissions.undetermined(ReasonCode.MISSING_KIND, Plan.NO_RULES, where);
        } else if (where != null) {
            permissions.undetermined(ReasonCode.NO_RULE_HELD, Plan.NO_RULES, where);
        }
    }

    private Plan plan(Facts facts, @Nullable Jurisdiction where) {
        Plans plans = regimes.of(facts, where);
        return plans == null ? Plan.NO_RULES : plans.plan(facts);
    }

    @Override
    public FillingLimit fillingLimit(Facts facts, @Nullable BigDecimal specificGravity, LocalDate asOf) {
        Plan plan = plan(facts, facts.jurisdiction());
        if (plan == Plan.NO_RULES) {
            ReasonCode code = facts.jurisdiction() == null
                    ? ReasonCode.MISSING_JURISDICTION
                    : facts.kind() == null ? ReasonCode.MISSING_KIND : ReasonCode.NO_RULE_HELD;
            return new FillingLimit.Unknown(List.of(Reason.of(code)));
        }
        return Limits.limit(plan, new Subject(facts, asOf, timeline), specificGravity);
    }

    @Override
    public SiteAssessment assessSite(SiteFacts facts, LocalDate asOf) {
        return sites.assess(facts, asOf);
    }

    @Override
    public List<Considered> explain(Facts facts, LocalDate asOf) {
        return new Explanation(new Subject(facts, asOf, timeline), assess(facts, asOf)).of(rules);
    }

    @Override
    public @Nullable LocalDate nextChangeAfter(Facts facts, LocalDate day) {
        Changes changes = new Changes(facts, day).ofFacts().ofRules(plan(facts, facts.jurisdiction()));
        Jurisdiction second = Regimes.second(facts);
        return (second == null ? changes : changes.ofRules(plan(facts, second))).first();
    }

    @Override
    public String hash() {
        return hash;
    }

    @Override
    public String canonicalText() {
        return canonicalText;
    }

    /** What a version of the engine names as switched on. */
    public static Set<String> enabledIn(String engineVersion) {
        int with = engineVersion.indexOf(WITH);
        return with < 0 ? Set.of() : Set.of(engineVersion.substring(with + WITH.length()).split(", "));
    }

    @Override
    public String engineVersion() {
        return engineVersion;
    }

    @Override
    public @Nullable LocalDate nextSwitchAfter(LocalDate day) {
        return timeline.nextAfter(day);
    }

    @Override
    public List<RuleInfo> rules() {
        return listing.rules();
    }

    @Override
    public List<NotHeld> notHeld() {
        return listing.notHeld();
    }
}
