package org.collarbook.schedule.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What holds of every container, over fleets drawn at random; the seed names the fleet. */
class FuturePropertiesTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final int YEARS = 20;

    private static Recording played(Facts facts, Choice choice) {
        return Recording.of(BOOK, facts, TODAY, YEARS, choice);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void isWhatComesOutMonthByMonth(long seed) {
        int compared = 0;
        for (var facts : new SeededFleet(seed).of(400)) {
            for (var choice : Choice.values()) {
                var slowly = MonthByMonth.shell(BOOK, facts, TODAY, YEARS, choice);
                if (facts.kind() == ContainerKind.CYLINDER) {
                    assertThat(played(facts, choice).shell()).as("seed %s, %s of %s", seed, choice, facts)
                            .isEqualTo(slowly);
                }
                compared += slowly.size();
            }
        }
        assertThat(compared).as("not for nothing").isGreaterThan(1000);
    }

    /** (g) gives five years and (e) ten to twelve: a look each time is never fewer times than a test. */
    @ParameterizedTest
    @ValueSource(longs = {4, 5, 6})
    void anExternalVisualIsAskedForAtLeastAsOften(long seed) {
        Map<Choice, Integer> totals = new EnumMap<>(Choice.class);
        for (var facts : new SeededFleet(seed).of(400)) {
            Map<Choice, Integer> times = new EnumMap<>(Choice.class);
            for (var choice : Choice.values()) {
                times.put(choice, played(facts, choice).shell().size());
                totals.merge(choice, times.get(choice), Integer::sum);
            }
            assertThat(times.get(Choice.EXTERNAL_VISUAL)).as("seed %s, %s", seed, facts)
                    .isGreaterThanOrEqualTo(times.get(Choice.PROOF_PRESSURE));
            assertThat(times.get(Choice.PROOF_PRESSURE)).as("seed %s, %s", seed, facts)
                    .isGreaterThanOrEqualTo(times.get(Choice.VOLUMETRIC_EXPANSION));
        }
        assertThat(totals.get(Choice.EXTERNAL_VISUAL)).isGreaterThan(totals.get(Choice.PROOF_PRESSURE));
        assertThat(totals.get(Choice.PROOF_PRESSURE)).isGreaterThan(totals.get(Choice.VOLUMETRIC_EXPANSION));
    }

    /** Nothing happens to what needs nothing, and each clock is either done or told why not. */
    @ParameterizedTest
    @ValueSource(longs = {7, 8, 9})
    void everyClockIsAccountedFor(long seed) {
        for (var facts : new SeededFleet(seed).of(400)) {
            var told = BOOK.assess(facts, TODAY);
            var recording = played(facts, Choice.EXTERNAL_VISUAL);
            boolean out = recording.silent.stream().anyMatch(one -> one.startsWith("null ") && !one.endsWith("later"));
            for (var clock : told.requirements()) {
                var name = clock.requirement().name();
                if (clock.outcome() instanceof Outcome.NotRequired && monthless(told, name)) {
                    assertThat(recording.done).as("seed %s, %s", seed, facts)
                            .noneMatch(one -> one.contains(" " + name + " "));
                }
                if (!out && !(clock.outcome() instanceof Outcome.Due) && monthless(told, name)) {
                    assertThat(recording.silent).as("seed %s, %s", seed, facts)
                            .anyMatch(one -> one.startsWith(name + " ") && !one.endsWith("later"));
                }
            }
        }
    }

    private static boolean monthless(Assessment told, String requirement) {
        return told.requirements().stream().filter(clock -> clock.requirement().name().equals(requirement))
                .noneMatch(clock -> clock.outcome() instanceof Outcome.Due);
    }
}
