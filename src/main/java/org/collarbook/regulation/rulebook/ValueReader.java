package org.collarbook.regulation.rulebook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.engine.Test;
import org.collarbook.regulation.engine.Value;
import org.jspecify.annotations.Nullable;

/** Reads what a rule says from one day until another. */
final class ValueReader {

    private static final Set<String> EFFECTS = Set.of("periods", "notRequired", "otherAuthority", "permitInterval",
            "condemns", "serviceLife", "requires", "densities");

    private final CitationReader citations;

    ValueReader(CitationReader citations) {
        this.citations = citations;
    }

    record Read(Value value, RuleInfo.DatedValue shown) {}

    Read read(Fields fields) {
        List<String> effects = EFFECTS.stream().filter(fields::has).toList();
        if (effects.size() != 1) {
            throw new RuleBookException(fields.path(), "expected exactly one of " + EFFECTS + ", found " + effects);
        }
        LocalDate from = fields.date("from");
        LocalDate until = fields.optionalDate("until");
        if (until != null && !until.isAfter(from)) {
            throw fields.wrong("until", "expected a day after " + from);
        }
        Policy policy = fields.optional("policy", "a policy", Policy::valueOf);
        Value.Effect effect = effect(effects.getFirst(), fields);
        Citation citation = citations.read(fields.child("citation"));
        Fields unread = fields.optionalChild("unread");
        LocalDate since = unread == null ? null : unread.date("since");
        String what = unread == null ? null : unread.text("amendment");
        if (unread != null) {
            unread.done();
        }
        fields.optional("note");
        fields.done();
        return new Read(new Value(from, until, policy, effect, citation, since, what),
                new RuleInfo.DatedValue(from, until,
                        policy, shown(effect), citation));
    }

    private static String shown(Value.Effect effect) {
        return switch (effect) {
            case Value.Periods periods -> periods.toString();
            case Value.Gate gate -> "else " + gate.otherwise();
            case Value.Densities densities -> densities.rows().size() + " rows of filling density";
            default -> effect.toString();
        };
    }

    private static Value.Effect effect(String name, Fields fields) {
        return switch (name) {
            case "periods" -> periods(fields.child(name));
            case "notRequired" -> notRequired(fields.text(name), fields);
            case "otherAuthority" -> new Value.OtherAuthority(fields.text(name));
            case "permitInterval" -> yes(fields, name, new Value.PermitInterval());
            case "condemns" -> yes(fields, name, new Value.Condemns());
            case "serviceLife" -> new Value.ServiceLife(fields.months(name));
            case "requires" -> gate(fields.child(name), fields.choice("otherwise", ReasonCode.class));
            default -> densities(fields.children(name));
        };
    }

    private static Value.Effect yes(Fields fields, String name, Value.Effect effect) {
        if (!fields.flag(name)) {
            throw fields.wrong(name, "expected true");
        }
        return effect;
    }

    private static Value.Effect notRequired(String text, Fields fields) {
        if (text.equals("true")) {
            return new Value.NotRequired(null);
        }
        return new Value.NotRequired(fields.required("notRequired", "true or a method", Method::valueOf));
    }

    private static Value.Effect periods(Fields fields) {
        Map<Method, Integer> after = new EnumMap<>(Method.class);
        int first = 0;
        for (String key : fields.keys()) {
            if (key.equals("first")) {
                first = positive(fields, key);
            } else {
                after.put(method(fields, key), positive(fields, key));
            }
        }
        return new Value.Periods(first, after);
    }

    private static int positive(Fields fields, String key) {
        int months = fields.months(key);
        if (months <= 0) {
            throw fields.wrong(key, "expected more than nothing");
        }
        return months;
    }

    private static Method method(Fields fields, String key) {
        try {
            return Method.valueOf(key);
        } catch (IllegalArgumentException unknown) {
            throw new RuleBookException(fields.path() + "." + key, "unknown method", unknown);
        }
    }

    private static Value.Effect gate(Fields requires, ReasonCode otherwise) {
        List<Test> tests = TestsReader.required(requires);
        return new Value.Gate(tests.toArray(Test[]::new), otherwise);
    }

    private static Value.Effect densities(List<Fields> rows) {
        List<Value.Densities.Density> read = new ArrayList<>();
        for (Fields row : rows) {
            BigDecimal percent = row.number("percent");
            BigDecimal over = row.optional("percentOver1200gal", "a number", BigDecimal::new);
            read.add(new Value.Densities.Density(row.number("from"), row.number("to"), percent, orElse(over, percent)));
            row.done();
        }
        return new Value.Densities(List.copyOf(read));
    }

    private static BigDecimal orElse(@Nullable BigDecimal one, BigDecimal other) {
        return one == null ? other : one;
    }
}
