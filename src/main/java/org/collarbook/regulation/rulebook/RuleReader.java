package org.collarbook.regulation.rulebook;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.engine.Part;
import org.collarbook.regulation.engine.Rule;
import org.collarbook.regulation.engine.Test;
import org.jspecify.annotations.Nullable;

/** Reads one rule with its examples. */
final class RuleReader {

    record Read(Rule rule, RuleInfo info, List<Claim> claims, RuleExample matching, RuleExample nonMatching) {}

    /** Families whose stamp is read with a number of its own, and the one that nothing bears. */
    private static final Set<String> NAMED_OTHERWISE = Set.of("SU", "SP", "UN", "NONE");

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
        Part part = PartReader.read(fields);
        Fields applies = fields.child("applies");
        Rule.Head head = new Rule.Head(id, fields.text("title"), jurisdiction, precedence(fields), selector(fields),
                scope(applies));
        List<Test> tests = TestsReader.read(applies);
        applies.done();
        List<ValueReader.Read> read = fields.children("values").stream()
                .map(value -> values.read(id, value)).toList();
        List<RuleInfo.DatedValue> shown = read.stream().map(ValueReader.Read::shown).toList();
        refuseOverlaps(fields, shown);
        if (part instanceof Part.Asks && (head.selector() != Rule.Selector.EVALUATION
                || shown.stream().anyMatch(value -> value.policy() != null))) {
            throw fields.wrong("gates", "asks by the day of evaluation and by no policy");
        }
        Rule rule = new Rule(head, part, tests, read.stream().map(ValueReader.Read::value).toList());
        Fields examples = fields.child("examples");
        RuleExample matching = RuleExample.read(id, true, jurisdiction, examples.child("matching"));
        RuleExample nonMatching = RuleExample.read(id, false, jurisdiction, examples.child("nonMatching"));
        examples.done();
        RuleInfo info = new RuleInfo(id, jurisdiction, part.topic(), head.title(), fields.optional("note"),
                head.precedence(), head.selector().name(), applies.asMap(), shown,
                List.of(matching.info(), nonMatching.info()));
        fields.done();
        List<Claim> claims = part instanceof Part.Sets(Requirement requirement, var _)
                ? read.stream().map(value -> new Claim(head, requirement, applies.asMap(), value)).toList()
                : List.of();
        return new Read(rule, info, claims, matching, nonMatching);
    }

    private static Rule.Scope scope(Fields applies) {
        Set<ContainerKind> kinds = applies.choices("kind", ContainerKind.class);
        if (kinds.isEmpty()) {
            throw applies.wrong("kind", "missing, expected of " + EnumSet.allOf(ContainerKind.class));
        }
        Set<String> ladings = new HashSet<>();
        for (String key : List.of("lading", "ladingNot", "statedLading", "statedLadingNot")) {
            ladings.addAll(applies.set(key));
        }
        refuseUnknownFamilies(applies, "family");
        return new Rule.Scope(kinds, Set.copyOf(applies.set("family")), applies.choices("authority", Authority.class),
                Set.copyOf(ladings));
    }

    /** A misspelt family would silently take the rule away from the one that was meant. */
    static void refuseUnknownFamilies(Fields fields, String key) {
        for (String family : fields.set(key)) {
            boolean known = Stream.of("DOT-", "TC-", "", "ADR-").map(prefix -> Specification.tryParse(prefix + family))
                    .anyMatch(read -> read instanceof ParseResult.Parsed<Specification>(Specification of, var _)
                            && of.family().equals(family));
            if (!known && !NAMED_OTHERWISE.contains(family)) {
                throw fields.wrong(key, "found '" + family + "', expected a family that can be stamped, such as 4BA");
            }
        }
    }

    private static int precedence(Fields fields) {
        Integer precedence = fields.optional("precedence", "a whole number", Integer::valueOf);
        return precedence == null ? 0 : precedence;
    }

    private static Rule.Selector selector(Fields fields) {
        Rule.@Nullable Selector selector = fields.optionalChoice("selectedBy", Rule.Selector.class);
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
                if (Claim.inForceTogether(a, b)) {
                    throw fields.wrong("values[" + j + "]", "is in force together with values[" + i + "]");
                }
            }
        }
    }
}
