package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;

/** What holds for every container, tried on many from a seed that a failure prints. */
class PropertiesTest {

    private static final long SEED = 20261125L;
    private static final int TRIES = 30_000;
    private static final RuleBook BOOK = RuleBookLoader.standard();

    @Test
    void makingAFactUnknownNeverAllowsMore() {
        Random random = new Random(SEED);
        RandomFacts source = new RandomFacts(random, true);
        int filled = 0;
        for (int i = 0; i < TRIES; i++) {
            Facts facts = source.next();
            LocalDate day = source.day();
            Assessment known = allowsNoMoreWithLess(facts, day, "seed %d".formatted(SEED));
            filled += known.mayFill().allowed() ? 1 : 0;
        }
        System.out.printf("seed %d: of %d containers %d might be filled%n", SEED, TRIES, filled);
        assertThat(filled).isGreaterThan(50);
    }

    /** The same of containers that lack nothing beside their marks, mostly in LP-gas service: many may be filled. */
    @Test
    void norForThoseThatAreOtherwiseInOrder() {
        RandomFacts source = new RandomFacts(new Random(SEED + 2), true);
        int filled = 0;
        for (int i = 0; i < TRIES / 3; i++) {
            Facts any = source.next();
            FactsBuilder inOrder = any.toBuilder().jurisdiction(Jurisdiction.US).marksLegible(true).ownerConsent(true)
                    .holds(List.of()).condition(Condition.SOUND);
            Facts facts = i % 4 == 0 ? inOrder.build() : inOrder.service(Service.LPG).use(Use.FUEL).build();
            filled += allowsNoMoreWithLess(facts, source.day(), "seed %d".formatted(SEED + 2)).mayFill().allowed()
                    ? 1
                    : 0;
        }
        System.out.printf("seed %d: of %d containers in order %d might be filled%n", SEED + 2, TRIES / 3, filled);
        assertThat(filled).isGreaterThan(300);
    }

    /** What the known facts permit; with any of them unknown nothing more is. */
    static Assessment allowsNoMoreWithLess(Facts facts, LocalDate day, String seed) {
        Assessment known = BOOK.assess(facts, day);
        Blurred.each(facts).forEach((name, less) -> {
            Assessment assessment = BOOK.assess(less, day);
            String about = "%s, %s unknown on %s: %s".formatted(seed, name, day, facts);
            assertThat(worse(known.mayFill(), assessment.mayFill())).as("mayFill, %s", about).isTrue();
            if (!name.equals("condition") && !name.equals("holds")) {
                assertThat(worse(known.mayCarry(), assessment.mayCarry())).as("mayCarry, %s", about).isTrue();
                assertThat(worse(known.mayUse(), assessment.mayUse())).as("mayUse, %s", about).isTrue();
                assertThat(worse(known.mayCarryEmpty(), assessment.mayCarryEmpty())).as("empty, %s", about).isTrue();
            }
        });
        return known;
    }

    private static boolean worse(Permission known, Permission less) {
        return known.allowed() || !less.allowed();
    }

    @Test
    void theOrderOfTheHistoryDoesNotMatter() {
        Random random = new Random(SEED);
        RandomFacts source = new RandomFacts(random, false);
        for (int i = 0; i < TRIES; i++) {
            Facts facts = source.next();
            List<Requalification> history = facts.requalifications();
            if (history != null) {
                List<Requalification> shuffled = new ArrayList<>(history);
                Collections.shuffle(shuffled, random);
                LocalDate day = source.day();
                assertThat(BOOK.assess(facts.toBuilder().requalifications(shuffled).build(), day))
                        .as("seed %d, %s", SEED,
                                facts)
                        .isEqualTo(BOOK.assess(facts, day));
            }
        }
    }

    @Test
    void anUnrelatedRuleChangesNothing() {
        Map<String, String> files = new HashMap<>(RuleBookLoader.shipped("regulations/"));
        files.put(
                "us/unrelated.yaml", files.get("us/49cfr-180.201.yaml").replace("us.180.201.asme", "us.unrelated")
                        .replace(
                                "family: [ASME]", "family: [MC-312]")
                        .replace("sets: SHELL", "sets: LINING"));
        RuleBook more = RuleBookLoader.of(files);
        assertThat(more.hash()).isNotEqualTo(BOOK.hash());
        RandomFacts source = new RandomFacts(new Random(SEED), false);
        for (int i = 0; i < TRIES; i++) {
            Facts facts = source.next();
            LocalDate day = source.day();
            assertThat(more.assess(facts, day)).as("seed %d, %s", SEED, facts).isEqualTo(BOOK.assess(facts, day));
        }
    }

    /** Total over anything that the types allow, and the same answer from the stored text of the book. */
    @Test
    void answersAnythingAndAlwaysTheSame() {
        RuleBook stored = RuleBookLoader.ofStored(BOOK.canonicalText(), BOOK.engineVersion());
        assertThat(stored.hash()).isEqualTo(BOOK.hash());
        RandomFacts source = new RandomFacts(new Random(SEED + 1), false);
        EnumSet<Status> met = EnumSet.noneOf(Status.class);
        for (int i = 0; i < TRIES; i++) {
            Facts facts = source.next();
            LocalDate day = source.day();
            Assessment assessment = BOOK.assess(facts, day);
            met.add(assessment.status());
            assertThat(stored.assess(facts, day)).as("seed %d, %s", SEED + 1, facts).isEqualTo(assessment);
            assertThat(assessment.mayFill().allowed() && assessment.status().compareTo(Status.DUE_THIS_MONTH) < 0).as(
                    "seed %d, %s", SEED + 1, facts).isFalse();
        }
        assertThat(met).containsExactlyInAnyOrder(Status.values());
    }

    /** Under one rule, by one method, a later test never gives an earlier due month. */
    @Test
    void aLaterTestNeverFallsDueEarlier() {
        for (Method method : List.of(Method.VOLUMETRIC_EXPANSION, Method.PROOF_PRESSURE, Method.EXTERNAL_VISUAL)) {
            YearMonth before = YearMonth.of(1990, 1);
            for (int months = 0; months < 200; months++) {
                Facts facts = Cases.cylinder()
                        .requalifications(List.of(Cases.mark(YearMonth.of(2005, 1).plusMonths(months),
                                method)))
                        .build();
                YearMonth due = BOOK.assess(facts, Cases.TODAY).firstDue();
                assertThat(due).isNotNull().isAfter(before);
                before = due;
            }
        }
    }
}
