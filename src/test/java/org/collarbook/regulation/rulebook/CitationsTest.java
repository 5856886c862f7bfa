package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.RuleInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every value tells where it stands, in which edition, since when, and how sure that is. */
class CitationsTest {

    private static final Set<Basis> WITHOUT_PAGE = Set.of(Basis.MEMORY, Basis.COMMON_PRACTICE);
    /** Fixed, so that the build of an old release does not change with the calendar. */
    private static final LocalDate CONFIRMED_SINCE = LocalDate.of(2025, 11, 25);

    record Cited(String rule, RuleInfo.DatedValue value) {

        Citation citation() {
            return value.citation();
        }

        @Override
        public String toString() {
            return rule + " from " + value.from();
        }
    }

    static Stream<Cited> cited() {
        return RuleBookLoader.standard().rules().stream()
                .flatMap(rule -> rule.values().stream().map(value -> new Cited(rule.id(), value)));
    }

    @ParameterizedTest
    @MethodSource("cited")
    void lacksNothing(Cited cited) {
        Citation citation = cited.citation();
        assertThat(List.of(citation.instrument(), citation.section(), citation.edition(), citation.url()))
                .allSatisfy(text -> assertThat(text).isNotBlank().doesNotContainIgnoringCase("todo"));
        assertThat(citation.url().startsWith("http") || WITHOUT_PAGE.contains(citation.basis())).as(citation.url())
                .isTrue();
        assertThat(citation.inForceFrom()).isBeforeOrEqualTo(cited.value().from());
        assertThat(citation.retrieved()).isBeforeOrEqualTo(citation.lastConfirmed());
        if (citation.published() != null) {
            assertThat(citation.published()).isBeforeOrEqualTo(citation.retrieved());
        }
    }

    /** What was not read in the regulation, or quoted from it, waits until it is asked for; so does a policy. */
    @ParameterizedTest
    @MethodSource("cited")
    void isOnByDefaultOnlyWhenReadOrQuoted(Cited cited) {
        boolean read = cited.citation().basis() == Basis.TEXT || cited.citation().basis() == Basis.QUOTED;
        assertThat(cited.value().onByDefault()).isEqualTo(read && cited.value().policy() == null);
    }

    /** Told and not failed: nobody's build breaks because a year went by. */
    @Test
    void whatWasNotConfirmedForAYearIsTold() {
        Set<String> old = new TreeSet<>();
        cited().filter(cited -> cited.citation().lastConfirmed().isBefore(CONFIRMED_SINCE))
                .forEach(cited -> old.add(cited + ", last confirmed " + cited.citation().lastConfirmed()));
        old.forEach(line -> System.out.println("to be confirmed again: " + line));
        assertThat(cited()).isNotEmpty();
    }

    /** The loader itself refuses a source that lacks a field, so that none can be left out by oversight. */
    @ParameterizedTest
    @MethodSource("fields")
    void aSourceWithoutItIsRefused(String field) {
        String text = RuleBookLoader.shipped("rulebook-frozen/").get("zz/frozen.yaml");
        String without = text.replaceFirst("(?m)^    " + field + ": .*\n", "");
        assertThat(without).isNotEqualTo(text);
        assertThat(catchThrowable(() -> RuleBookLoader.of(Map.of("zz", without))))
                .isInstanceOf(RuleBookException.class).hasMessageContaining(field + ": missing");
    }

    static Stream<String> fields() {
        return Stream.of("instrument", "edition", "published", "url", "retrieved", "lastConfirmed");
    }
}
