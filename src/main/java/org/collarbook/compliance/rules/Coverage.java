package org.collarbook.compliance.rules;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;

import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.RuleInfo.DatedValue;

/** How far the rule book reaches, as it stands on {@code asOf}; what is not named here is not held. */
record Coverage(LocalDate asOf, RuleBookAnswer ruleBook, int rules, List<HeldSection> held, List<OffRules> off,
        List<SectionNotHeld> notHeld, List<UnreadAmendment> unread) {

    /** A section of an instrument, without its paragraphs, and the rules that cite it. */
    record HeldSection(String jurisdiction, String instrument, String section, int rules, List<String> ids) {}

    /** Rules that say nothing unless a request asks for them; {@code ask} is how. */
    record OffRules(String code, String why, String ask, int rules, List<String> ids) {}

    record SectionNotHeld(String jurisdiction, String section, String what, String why) {}

    record UnreadAmendment(String id, String jurisdiction, String instrument, String section, String edition,
            String amendment) {}

    static Coverage of(RuleBook book, LocalDate today) {
        var rules = book.rules();
        return new Coverage(today, RuleBookAnswer.from(book), rules.size(), held(rules), off(rules, today),
                book.notHeld().stream().map(one -> new SectionNotHeld(one.jurisdiction().code(), one.section(),
                        one.what(), one.why())).toList(),
                unread(rules, today));
    }

    /** By jurisdiction, instrument and section; a rule stands under each section that one of its values cites. */
    private static List<HeldSection> held(List<RuleInfo> rules) {
        var sections = new TreeMap<List<String>, TreeSet<String>>(Comparator.comparing(
                (List<String> key) -> String.join("\n", key)));
        for (var rule : rules) {
            for (var value : rule.values()) {
                sections.computeIfAbsent(List.of(rule.jurisdiction().code(), value.citation().instrument(),
                        section(value)), key -> new TreeSet<>()).add(rule.id());
            }
        }
        var held = new ArrayList<HeldSection>();
        sections.forEach((key, ids) -> held.add(new HeldSection(key.get(0), key.get(1), key.get(2), ids.size(),
                List.copyOf(ids))));
        return List.copyOf(held);
    }

    /** {@code 180.209} of {@code 180.209(b)(1); 180.213(f)(2)}. */
    private static String section(DatedValue value) {
        return value.citation().section().split("[(;,]", 2)[0].strip();
    }

    private static List<OffRules> off(List<RuleInfo> rules, LocalDate today) {
        var byBasis = Arrays.stream(Basis.values()).filter(basis -> !basis.onByDefault())
                .map(basis -> off(basis.name(), why(basis), "enable: \"" + basis + "\", or the rule's id", rules,
                        rule -> inForce(rule, today).anyMatch(value -> value.policy() == null
                                && value.citation().basis() == basis)));
        var byPolicy = Arrays.stream(Policy.values())
                .map(policy -> off(policy.name(), "A reading beside the text, which is not the law's own words.",
                        "policies: \"" + policy + "\"", rules,
                        rule -> rule.values().stream().anyMatch(value -> value.policy() == policy)));
        var idle = off("NOT_IN_FORCE", "No value is in force today: it has ended, or lies ahead.",
                "a day in asOf on which one is in force", rules, rule -> inForce(rule, today).findAny().isEmpty());
        return Stream.of(byBasis, byPolicy, Stream.of(idle)).flatMap(all -> all)
                .filter(one -> one.rules() > 0).toList();
    }

    private static OffRules off(String code, String why, String ask, List<RuleInfo> rules,
            Predicate<RuleInfo> concerned) {
        var ids = rules.stream().filter(concerned).map(RuleInfo::id).sorted().toList();
        return new OffRules(code, why, ask, ids.size(), ids);
    }

    private static String why(Basis basis) {
        return switch (basis) {
            case TEXT -> "Read in the regulation itself.";
            case QUOTED -> "Read in somebody else's short quotation of the regulation.";
            case SECONDARY -> "Told by a second-hand source; the regulation itself was not read.";
            case COMMON_PRACTICE -> "What the trade does, with no source.";
            case MEMORY -> "Written down from memory; no text was read.";
        };
    }

    private static Stream<DatedValue> inForce(RuleInfo rule, LocalDate today) {
        return rule.values().stream().filter(value -> value.inForceOn(today));
    }

    private static List<UnreadAmendment> unread(List<RuleInfo> rules, LocalDate today) {
        var unread = new ArrayList<UnreadAmendment>();
        for (var rule : rules) {
            inForce(rule, today).forEach(value -> {
                if (value.unread() != null) {
                    var citation = value.citation();
                    unread.add(new UnreadAmendment(rule.id(), rule.jurisdiction().code(), citation.instrument(),
                            citation.section(), citation.edition(), value.unread()));
                }
            });
        }
        return List.copyOf(unread);
    }
}
