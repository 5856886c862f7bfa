package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The properties where they could be empty: place by place, with each basis of rules asked for. */
class PropertiesByPlaceTest {

    private static final long SEED = 20261125L;
    private static final int TRIES = 6_000;
    private static final int EXERCISED = 30;
    private static final RuleBook BOOK = RuleBookLoader.standard();

    @ParameterizedTest
    @ValueSource(strings = {"US", "CA", "CA-BC", "CA-AB", "ADR", "UK", "AU", "NZ", "UN"})
    void makingAFactUnknownNeverAllowsMore(String place) {
        RandomFacts source = new RandomFacts(new Random(SEED), true, new Jurisdiction(place));
        TreeMap<String, Integer> allowed = new TreeMap<>();
        int any = 0;
        for (int i = 0; i < TRIES; i++) {
            Facts facts = source.next();
            Assessment known = PropertiesTest.allowsNoMoreWithLess(facts, source.day(), place + ", seed " + SEED);
            any += known.mayFill().allowed() || known.mayCarry().allowed() || known.mayUse().allowed() ? 1 : 0;
            count(allowed, "fill", known.mayFill());
            count(allowed, "carry", known.mayCarry());
            count(allowed, "use", known.mayUse());
            count(allowed, "empty", known.mayCarryEmpty());
        }
        System.out.printf("%s, seed %d: of %d containers %d were allowed something full: %s%n", place, SEED, TRIES, any,
                allowed);
        assertThat(any).as("%s is not tried by containers to which nothing is allowed", place)
                .isGreaterThan(EXERCISED);
    }

    private static void count(TreeMap<String, Integer> allowed, String what, Permission permission) {
        allowed.merge(what, permission.allowed() ? 1 : 0, Integer::sum);
    }

    /** What the loader lets stand side by side never answers together. */
    @ParameterizedTest
    @ValueSource(strings = {"US", "CA-BC", "ADR", "UK", "UN"})
    void noTwoRulesOfOneRankApply(String place) {
        RandomFacts source = new RandomFacts(new Random(SEED), false, new Jurisdiction(place));
        TreeMap<String, RuleInfo> rules = new TreeMap<>();
        BOOK.rules().forEach(rule -> rules.put(rule.id(), rule));
        for (int i = 0; i < TRIES / 4; i++) {
            Facts facts = source.next();
            LocalDate day = source.day();
            if (facts.requalifications() != null
                    && facts.requalifications().stream().anyMatch(one -> one.method() == null)) {
                // a mark of no known method is any rule's, and each asks for the method
                continue;
            }
            Set<String> taken = new HashSet<>();
            for (Considered one : BOOK.explain(facts, day)) {
                boolean applies = one.verdict() == Considered.Verdict.GOVERNS
                        || one.verdict() == Considered.Verdict.OUTRANKED;
                if (applies && isClock(one.topic())) {
                    String rank = one.jurisdiction().country() + " " + one.topic() + " "
                            + rules.get(one.ruleId()).precedence();
                    assertThat(taken.add(rank)).as("seed %d: %s and another, %s on %s: %s", SEED, one.ruleId(), rank,
                            day, facts).isTrue();
                }
            }
        }
    }

    private static boolean isClock(String topic) {
        return Arrays.stream(Requirement.values()).anyMatch(one -> one.name().equals(topic));
    }
}
