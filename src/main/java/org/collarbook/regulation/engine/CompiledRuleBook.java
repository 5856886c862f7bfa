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

    private final Map<Jurisdiction, Map<ContainerKind, Map<String, Plan>>> plans = new HashMap<>();
    private final Map<Jurisdiction, Map<ContainerKind, Plan>> others = new HashMap<>();
    private final LocalDate[] switches;
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
        switches = days.toArray(LocalDate[]::new);
        rules.stream().map(rule -> rule.jurisdiction).distinct().forEach(where -> layOut(where, rules.stream().filter(
                rule -> rule.jurisdiction.equals(where)).toList()));
    }

    private void layOut(Jurisdiction where, List<Rule> rules) {
        Map<ContainerKind, Map<String, Plan>> byKind = new EnumMap<>(ContainerKind.class);
        Map<ContainerKind, Plan> rest = new EnumMap<>(ContainerKind.class);
        for (ContainerKind kind : ContainerKind.values()) {
            Map<String, Plan> byFamily = new HashMap<>();
            rules.stream().flatMap(rule -> rule.families.stream()).distinct()
                    .forEach(family -> byFamily.put(family, Plan.of(
                            rules, kind, family)));
            byKind.put(kind, byFamily);
            rest.put(kind, Plan.of(rules, kind, null));
        }
        plans.put(where, byKind);
        others.put(where, rest);
    }

    @Override
    public Assessment assess(Facts facts, LocalDate asOf) {
        Subject subject = new Subject(facts, asOf);
        Permissions permissions = new Permissions(subject);
        Plan plan = plan(facts);
        if (plan == null) {
            unplanned(facts, permissions);
            permissions.standing();
            return permissions.answer();
        }
        if (plan.groups().length == 0 || facts.specification() == null) {
            permissions.undetermined(facts.specification() == null
                    ? ReasonCode.MISSING_SPECIFICATION
                    : ReasonCode.NO_RULE_HELD);
        } else {
            for (Plan.Group group : plan.groups()) {
                permissions.count(Clocks.read(group, subject, asOf), group);
            }
        }
        permissions.gate(plan.gates(), asOf);
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
        if (where == null || kind == null || !plans.containsKey(where)) {
            return null;
        }
        Plan plan = facts.specification() == null
                ? null
                : plans.get(where).get(kind).get(facts.specification().family());
        return plan == null ? others.get(where).get(kind) : plan;
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
        return Limits.limit(plan.densities(), new Subject(facts, asOf), specificGravity, asOf);
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
        for (LocalDate date : switches) {
            if (date.isAfter(day)) {
                return date;
            }
        }
        return null;
    }

    @Override
    public List<RuleInfo> rules() {
        return infos;
    }
}
