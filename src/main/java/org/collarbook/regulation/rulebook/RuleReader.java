package org.collarbook.regulation.rulebook;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.engine.Rule;
import org.collarbook.regulation.engine.Test;
import org.collarbook.regulation.engine.Value;
import org.jspecify.annotations.Nullable;

/** Reads one rule with its examples. */
final class RuleReader {

    record Read(Rule rule, RuleInfo info, RuleExample matching, RuleExample nonMatching) {}

    /** Conditions on what is stamped, by which rules are laid out beforehand. */
    static final Set<String> LAID_OUT = Set.of("kind", "family", "authority");

    private final Jurisdiction jurisdiction;
    private final ValueReader values;

    RuleReader(Jurisdiction jurisdiction, ValueReader values) {
        this.jurisdiction = jurisdiction;
        this.values = values;
    }

    Read read(String file, Fields unnamed) {
        String id = unnamed.text("id");
        Fields fields = unnamed.renamed(file + ": " + id);
        fields.text("id");
        String title = fields.text("title");
        Requirement sets = fields.optional("sets", "a requirement", Requirement::valueOf);
        Rule.Topic gates = fields.optional("gates", "a topic", Rule.Topic::valueOf);
        boolean limits = "FILLING_DENSITY".equals(fields.optional("limits"));
        if ((sets == null ? 0 : 1) + (gates == null ? 0 : 1) + (limits ? 1 : 0) != 1) {
            throw new RuleBookException(fields.path(), "expected one of sets, gates and limits");
        }
        Fields applies = fields.child("applies");
        Set<ContainerKind> kinds = applies.choices("kind", ContainerKind.class);
        Set<String> families = Set.copyOf(applies.set("family"));
        Set<Authority> authorities = applies.choices("authority", Authority.class);
        Set<String> ladings = new HashSet<>(applies.set("lading"));
        ladings.addAll(applies.set("ladingNot"));
        if (kinds.isEmpty()) {
            throw applies.wrong("kind", "missing");
        }
        List<Test> tests = TestsReader.read(applies);
        applies.done();
        List<Value> read = new ArrayList<>();
        List<RuleInfo.DatedValue> shown = new ArrayList<>();
        for (Fields value : fields.children("values")) {
            ValueReader.Read one = values.read(value);
            read.add(one.value());
            shown.add(one.shown());
        }
        refuseOverlaps(fields, shown);
        Rule rule = new Rule(id, title, jurisdiction, sets, gates, forbids(fields), precedence(fields),
                selector(fields),
                kinds, families, authorities, ladings, tests, read);
        String topic = sets != null ? sets.name() : gates != null ? gates.name() : "FILLING_DENSITY";
        Fields examples = fields.child("examples");
        RuleExample matching = RuleExample.read(id, true, jurisdiction, examples.child("matching"));
        RuleExample nonMatching = RuleExample.read(id, false, jurisdiction, examples.child("nonMatching"));
        examples.done();
        fields.optional("note");
        fields.done();
        return new Read(rule, new RuleInfo(id, jurisdiction, topic, title, List.copyOf(shown)), matching, nonMatching);
    }

    private static Set<Rule.Allows> forbids(Fields fields) {
        Set<Rule.Allows> forbids = fields.choices("forbids", Rule.Allows.class);
        return forbids.isEmpty() ? EnumSet.of(Rule.Allows.FILL) : forbids;
    }

    private static int precedence(Fields fields) {
        Integer precedence = fields.optional("precedence", "a whole number", Integer::valueOf);
        return precedence == null ? 0 : precedence;
    }

    private static Rule.Selector selector(Fields fields) {
        Rule.@Nullable Selector selector = fields.optional("selectedBy", "a date", Rule.Selector::valueOf);
        return selector == null ? Rule.Selector.EVALUATION : selector;
    }

    /** Two values without a policy, or of one policy, may not be in force on one day. */
    private static void refuseOverlaps(Fields fields, List<RuleInfo.DatedValue> values) {
        if (values.isEmpty()) {
            throw fields.wrong("values", "expected at least one");
        }
        for (int i = 0; i < values.size(); i++) {
            for (int j = i + 1; j < values.size(); j++) {
                RuleInfo.DatedValue a = values.get(i);
                RuleInfo.DatedValue b = values.get(j);
                boolean apart = a.until() != null && !b.from().isBefore(a.until()) || b.until() != null && !a.from()
                        .isBefore(b.until());
                if (a.policy() == b.policy() && !apart) {
                    throw fields.wrong("values[" + j + "]", "is in force together with values[" + i + "]");
                }
            }
        }
    }
}
