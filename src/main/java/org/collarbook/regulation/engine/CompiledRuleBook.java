package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;

/** The rule book that the loader compiles. */
public final class CompiledRuleBook implements RuleBook {

    private static final String ENGINE = "1";

    private final Map<String, Map<ContainerKind, Plans>> plans = new HashMap<>();
    private final Timeline timeline;
    private final List<RuleInfo> infos;
    private final String hash;
    private final String canonicalText;

    public CompiledRuleBook(List<Rule> rules, List<RuleInfo> infos, String hash, String canonicalText) {
        this.infos = List.copyOf(infos);
        this.hash = hash;
        this.canonicalText = canonicalText;
        TreeSet<LocalDate> days = new TreeSet<>();
        rules.forEach(rule -> Arrays.stream(rule.values).forEach(value -> {
            days.add(value.from);
            if (value.until != null) {
                days.add(value.until);
            }
        }));
        timeline = new Timeline(days.toArray(LocalDate[]::new));
        rules.forEach(rule -> rule.layOut(timeline.switches()));
        rules.stream().map(rule -> rule.jurisdiction).distinct().forEach(where -> {
            List<Rule> there = rules.stream().filter(rule -> rule.jurisdiction.equals(where)).toList();
            Map<ContainerKind, Plans> byKind = new EnumMap<>(ContainerKind.class);
            for (ContainerKind kind : ContainerKind.values()) {
                byKind.put(kind, Plans.of(there, kind));
            }
            plans.put(where.code(), byKind);
        });
    }

    @Override
    public Assessment assess(Facts facts, LocalDate asOf) {
        Subject subject = new Subject(facts, asOf, timeline);
        Permissions permissions = new Permissions(subject);
        Plan plan = plan(facts);
        if (plan == null) {
            unplanned(facts, permissions);
            permissions.standing();
            return permissions.answer();
        }
        if (plan.groups.length == 0 || facts.specification() == null) {
            permissions.undetermined(facts.specification() == null
                    ? ReasonCode.MISSING_SPECIFICATION
                    : ReasonCode.NO_RULE_HELD);
        } else {
            for (Plan.Group group : plan.groups) {
                permissions.count(Clocks.read(group, subject, asOf), group);
            }
        }
        permissions.gate(plan.gates, asOf);
        permissions.standing();
        return permissions.answer();
    }

    private void unplanned(Facts facts, Permissions permissions) {
        boolean unknown = facts.jurisdiction() == null || facts.kind() == null;
        permissions.undetermined(facts.jurisdiction() == null ? ReasonCode.MISSING_JURISDICTION : null);
        permissions.undetermined(facts.kind() == null ? ReasonCode.MISSING_KIND : null);
        permissions.undetermined(unknown ? null : ReasonCode.NO_RULE_HELD);
    }

    private @Nullable Plan plan(Facts facts) {
        Jurisdiction where = facts.jurisdiction();
        ContainerKind kind = facts.kind();
        Map<ContainerKind, Plans> there = where == null ? null : plans.get(where.code());
        return there == null || kind == null
                ? null
                : there.get(kind).plan(facts.specification()).knowing(facts.service()
                        .lading());
    }

    @Override
    public FillingLimit fillingLimit(Facts facts, @Nullable BigDecimal specificGravity, LocalDate asOf) {
        Plan plan = plan(facts);
        if (plan == null) {
            ReasonCode code = facts.jurisdiction() == null
                    ? ReasonCode.MISSING_JURISDICTION
                    : facts.kind() == null ? ReasonCode.MISSING_KIND : ReasonCode.NO_RULE_HELD;
            return new FillingLimit.Unknown(List.of(Reason.of(code)));
        }
        return Limits.limit(plan.densities, new Subject(facts, asOf, timeline), specificGravity, asOf);
    }

    @Override
    public String hash() {
        return hash;
    }

    @Override
    public String canonicalText() {
        return canonicalText;
    }

    @Override
    public String engineVersion() {
        return ENGINE;
    }

    @Override
    public @Nullable LocalDate nextSwitchAfter(LocalDate day) {
        return timeline.nextAfter(day);
    }

    @Override
    public List<RuleInfo> rules() {
        return infos;
    }
}
