package org.collarbook.regulation.rulebook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.engine.Effect;
import org.collarbook.regulation.engine.Test;
import org.collarbook.regulation.engine.Value;
import org.jspecify.annotations.Nullable;

/** Reads what a rule says from one day until another. */
final class ValueReader {

    private static final Set<String> EFFECTS = Set.of("periods", "notRequired", "otherAuthority", "permitInterval",
            "condemns", "serviceLife", "requires", "densities", "undecided", "asRecorded", "inForce",
            "extinguisher");

    private final CitationReader citations;
    private final Set<String> enabled;
    private final Map<Reason, Reason> unread = new HashMap<>();

    ValueReader(CitationReader citations, Set<String> enabled) {
        this.enabled = enabled;
        this.citations = citations;
    }

    record Read(Value value, Effect effect, RuleInfo.DatedValue shown) {}

    Read read(String ruleId, Fields fields) {
        List<String> effects = EFFECTS.stream().filter(fields::has).toList();
        if (effects.size() != 1) {
            throw new RuleBookException(fields.path(), "expected exactly one of " + EFFECTS + ", found " + effects);
        }
        LocalDate from = fields.date("from");
        LocalDate until = fields.optionalDate("until");
        if (until != null && !until.isAfter(from)) {
            throw fields.wrong("until", "expected a day after " + from);
        }
        Policy policy = fields.optionalChoice("policy", Policy.class);
        Effect effect = effect(effects.getFirst(), fields);
        Citation citation = citations.read(fields.child("citation"));
        Fields later = fields.optionalChild("unread");
        LocalDate since = later == null ? null : later.date("since");
        String what = later == null ? null : later.text("amendment");
        if (later != null) {
            later.done();
        }
        fields.optional("note");
        fields.done();
        boolean on = citation.basis().onByDefault() || enabled.contains(citation.basis().name())
                || enabled.contains(ruleId);
        return new Read(new Value(from, until, policy, effect, citation, since, unread(what, citation), on), effect,
                new RuleInfo.DatedValue(from, until, policy, effect.shown(), on && policy == null, what, citation));
    }

    /** One object a text and citation, so that it is told once whatever values say it. */
    private @Nullable Reason unread(@Nullable String amendment, Citation citation) {
        if (amendment == null) {
            return null;
        }
        ReasonCode code = ReasonCode.CURRENT_TEXT_NOT_READ;
        Reason reason = new Reason(code, code.text() + " " + amendment, citation);
        return unread.computeIfAbsent(reason, same -> same);
    }

    private static Effect effect(String name, Fields fields) {
        return switch (name) {
            case "periods" -> periods(fields.child(name), fields.optional("notBefore", "a month", YearMonth::parse));
            case "undecided" -> new Effect.Undecided(fields.choice(name, ReasonCode.class));
            case "asRecorded" -> yes(fields, name, new Effect.AsRecorded());
            case "inForce" -> yes(fields, name, new Effect.InForce());
            case "notRequired" -> notRequired(fields.text(name), fields);
            case "otherAuthority" -> new Effect.OtherAuthority(fields.text(name));
            case "permitInterval" -> yes(fields, name, new Effect.PermitInterval());
            case "condemns" -> yes(fields, name, new Effect.Condemns());
            case "serviceLife" -> new Effect.ServiceLife(fields.months(name));
            case "requires" -> gate(fields.child(name), fields);
            case "extinguisher" -> rating(fields.child(name));
            default -> densities(fields.children(name));
        };
    }

    private static Effect yes(Fields fields, String name, Effect effect) {
        if (!fields.flag(name)) {
            throw fields.wrong(name, "expected true");
        }
        return effect;
    }

    private static Effect notRequired(String text, Fields fields) {
        if (text.equals("true")) {
            return new Effect.NotRequired(null);
        }
        return new Effect.NotRequired(fields.required("notRequired", "true or a method", Method::valueOf));
    }

    private static Effect periods(Fields fields, @Nullable YearMonth notBefore) {
        Map<Method, Integer> after = new EnumMap<>(Method.class);
        int first = 0;
        int any = 0;
        for (String key : fields.keys()) {
            switch (key) {
                case "first" -> first = positive(fields, key);
                case "any" -> any = positive(fields, key);
                default -> after.put(method(fields, key), positive(fields, key));
            }
        }
        return new Effect.Periods(first, any, notBefore, after);
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
            throw new RuleBookException(fields.path() + "." + key,
                    "unknown method, expected first, any or one of " + EnumSet.allOf(Method.class), unknown);
        }
    }

    private static Effect gate(Fields requires, Fields fields) {
        List<Test> tests = TestsReader.required(requires);
        return new Effect.Gate(tests.toArray(Test[]::new), fields.choice("otherwise", ReasonCode.class),
                fields.optional("gravityAtLeast", "a number", BigDecimal::new));
    }

    private enum Advice {
        REQUIRED,
        RECOMMENDED
    }

    private static Effect rating(Fields fields) {
        int atLeast = fields.required("atLeast", "a whole number", Integer::valueOf);
        Effect.Rating rating = new Effect.Rating(atLeast, fields.choice("advice", Advice.class) == Advice.REQUIRED);
        fields.done();
        return rating;
    }

    private static Effect densities(List<Fields> rows) {
        List<Effect.Densities.Density> read = new ArrayList<>();
        for (Fields row : rows) {
            BigDecimal percent = row.number("percent");
            BigDecimal over = row.optional("percentOver1200gal", "a number", BigDecimal::new);
            read.add(
                    new Effect.Densities.Density(row.number("from"), row.number("to"), percent, orElse(over, percent)));
            row.done();
        }
        return new Effect.Densities(List.copyOf(read));
    }

    private static BigDecimal orElse(@Nullable BigDecimal one, BigDecimal other) {
        return one == null ? other : one;
    }
}
