package org.collarbook.compliance.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** Which rules are asked for, as query parameters; a null leaves that side open. */
record RuleFilter(@Nullable String jurisdiction, @Nullable String topic,
        @Schema(implementation = Basis.class) @Nullable String basis,
        @Schema(implementation = Boolean.class) @Nullable String on, @Nullable String q) {

    private static final int LONGEST = 100;

    /** Refuses by problem what no rule could ever match, so that a typing error is not read as "no rule". */
    Predicate<RuleInfo> over(List<RuleInfo> rules, LocalDate today) {
        var inputs = new Inputs();
        var asked = of(place(inputs, rules)).and(about(topic(inputs, rules)))
                .and(based(inputs.word("basis", basis, Basis.class), today)).and(switched(inputs, today))
                .and(naming(inputs.optional("q", q, LONGEST)));
        inputs.done();
        return asked;
    }

    private @Nullable Jurisdiction place(Inputs inputs, List<RuleInfo> rules) {
        if (isBlank(jurisdiction)) {
            return null;
        }
        var place = Jurisdiction.isWellFormed(jurisdiction) ? new Jurisdiction(jurisdiction) : null;
        if (place == null || rules.stream().noneMatch(rule -> place.isWithin(rule.jurisdiction()))) {
            inputs.refuse("jurisdiction", "UNKNOWN_WORD", jurisdiction, "a place for which rules are held: "
                    + all(rules, rule -> rule.jurisdiction().code()) + ", or a province of one, such as US-TX");
        }
        return place;
    }

    private @Nullable String topic(Inputs inputs, List<RuleInfo> rules) {
        if (isBlank(topic)) {
            return null;
        }
        var word = topic.strip().toUpperCase(Locale.ROOT);
        if (rules.stream().noneMatch(rule -> rule.topic().equals(word))) {
            inputs.refuse("topic", "UNKNOWN_WORD", topic, "one of " + all(rules, RuleInfo::topic));
        }
        return word;
    }

    private Predicate<RuleInfo> switched(Inputs inputs, LocalDate today) {
        if (isBlank(on)) {
            return rule -> true;
        }
        var word = on.strip();
        if (!word.equals("true") && !word.equals("false")) {
            inputs.refuse("on", "WRONG_TYPE", on, "true or false");
        }
        return rule -> ValueToday.isOn(rule, today) == Boolean.parseBoolean(word);
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }

    private static String all(List<RuleInfo> rules, Function<RuleInfo, String> word) {
        return rules.stream().map(word).collect(Collectors.toCollection(TreeSet::new)).stream()
                .collect(Collectors.joining(", "));
    }

    /** The rules that answer at the place: a province's own and its country's. */
    private static Predicate<RuleInfo> of(@Nullable Jurisdiction place) {
        return rule -> place == null || place.isWithin(rule.jurisdiction());
    }

    private static Predicate<RuleInfo> about(@Nullable String topic) {
        return rule -> topic == null || topic.equals(rule.topic());
    }

    private static Predicate<RuleInfo> based(@Nullable Basis basis, LocalDate today) {
        return rule -> basis == null || ValueToday.of(rule, today)
                .filter(value -> value.citation().basis() == basis).isPresent();
    }

    private static Predicate<RuleInfo> naming(@Nullable String text) {
        var sought = text == null ? "" : text.toLowerCase(Locale.ROOT);
        return rule -> rule.id().toLowerCase(Locale.ROOT).contains(sought)
                || rule.title().toLowerCase(Locale.ROOT).contains(sought);
    }
}
