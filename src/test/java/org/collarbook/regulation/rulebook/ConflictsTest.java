package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two rules of one precedence that could both answer are refused, whatever they would say; those that cannot, pass. */
class ConflictsTest {

    private static final String VALUE = "{from: 2000-01-01, periods: {first: P3Y, VOLUMETRIC_EXPANSION: P3Y}, CITED}";
    private static final String CITED = "citation: {source: code, section: '1', inForceFrom: 2000-01-01, basis: TEXT}";

    private record Half(String applies, String value, String rest) {

        static Half of(String applies) {
            return new Half(applies, VALUE, "");
        }

        String rule(String id) {
            return """
                      - id: ID
                        title: A rule
                        sets: SHELL
                        applies: {kind: [CYLINDER], APPLIES}
                        values: [VALUE]
                        examples:
                          matching: {asOf: 2026-01-01, facts: {}, gives: 2023-01}
                          nonMatching: {asOf: 2026-01-01, facts: {}}
                    """.replace("APPLIES", applies).replace("VALUE", value).replace("CITED", CITED).replace("ID", id)
                    + rest;
        }
    }

    private static String file(String jurisdiction, String rules) {
        return """
                subject: Rules of no country
                jurisdiction: WHERE
                sources:
                  code:
                    instrument: Code of Nowhere
                    edition: first
                    published: 2000-01-01
                    url: https://example.org/code
                    retrieved: 2026-01-01
                    lastConfirmed: 2026-01-01
                rules:
                """.replace("WHERE", jurisdiction) + rules;
    }

    private static void load(Half one, Half other) {
        RuleBookLoader.of(Map.of("zz", file("ZZ", one.rule("zz.one") + other.rule("zz.other"))));
    }

    private static void refused(Half one, Half other) {
        assertThatThrownBy(() -> load(one, other)).isInstanceOf(RuleBookException.class)
                .hasMessageContaining("zz.one").hasMessageContaining("zz.other").hasMessageContaining("SHELL");
        assertThatThrownBy(() -> load(other, one)).isInstanceOf(RuleBookException.class);
    }

    private static void passes(Half one, Half other) {
        load(one, other);
        load(other, one);
    }

    @Test
    void theSameRuleTwice() {
        refused(Half.of("family: [4BA]"), Half.of("family: [4BA]"));
        String base = RuleBookLoader.shipped("rulebook-frozen/").get("zz/frozen.yaml");
        String copy = base.replace("id: zz.", "id: yy.");
        assertThatThrownBy(() -> RuleBookLoader.of(Map.of("a", base, "b", copy)))
                .isInstanceOf(RuleBookException.class).hasMessageContaining("zz.base").hasMessageContaining("yy.base");
    }

    /** Something could be of both kinds: a capacity at the limit, a month between, a fact that one rule leaves open. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"family: [4B, 4BA]|family: [4BA, 4BW]", "family: [4BA]|coated: true",
            "authority: [DOT, ICC]|family: [4BA]", "waterCapacityAtMost: 12 lb|waterCapacityAtLeast: 12 lb",
            "waterCapacityAtMost: 13 lb|waterCapacityOver: 12 lb", "waterCapacityUnder: 13250 L"
                    + "|waterCapacityAtLeast: 3500 gal",
            "waterCapacityAtMost: 12 lb|waterCapacityAtMost: 20 lb", "lading: [LPG, OXYGEN]|lading: [OXYGEN]",
            "lading: [LPG, OXYGEN]|ladingNot: [LPG]", "lading: [LPG]|statedLading: [LPG]",
            "lading: [LPG]|exclusive: true", "ladingNot: [LPG]|ladingNot: [OXYGEN]", "coated: true|coated: true",
            "coated: true|lined: false", "madeBefore: 2010-02|madeFrom: 2010-01", "star: true|exclusive: false",
            "markAgeUnder: P13M|markAgeAtLeast: P1Y", "servicePressureAtMost: 300|servicePressureAtLeast: 400",
            "statedUse: [FIRE_EXTINGUISHER]|lading: [OXYGEN]", "statedExtension: [P15Y]|family: [4BA]"})
    void thatMayMeetAreRefused(String one, String other) {
        refused(Half.of(one), Half.of(other));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"family: [4BA]|family: [4BW]", "authority: [DOT]|authority: [TC]",
            "waterCapacityAtMost: 12 lb|waterCapacityOver: 12 lb", "waterCapacityUnder: 12 lb"
                    + "|waterCapacityAtLeast: 12 lb",
            "waterCapacityUnder: 3500 gal|waterCapacityAtLeast: 13250 L",
            "waterCapacityAtMost: 5 kg|waterCapacityOver: 12 lb", "lading: [LPG]|lading: [OXYGEN]",
            "lading: [LPG]|ladingNot: [LPG, PROPANE]", "statedLading: [LPG]|statedLadingNot: [LPG]",
            "coated: true|coated: false", "exclusive: true|exclusive: false", "star: true|star: false",
            "composite: true|composite: false", "madeBefore: 2010-01|madeFrom: 2010-01",
            "markAgeUnder: P1Y|markAgeAtLeast: P12M", "steel: NQT|steel: QT",
            "use: [FUEL]|statedUse: [FIRE_EXTINGUISHER]", "statedExtension: [P15Y]|statedExtension: [NONE]",
            "installation: UNDERGROUND|installation: ABOVEGROUND", "reliefValve: INTERNAL|reliefValve: EXTERNAL"})
    void thatCannotMeetPass(String one, String other) {
        passes(Half.of(one), Half.of(other));
    }

    @Test
    void methodsAndTheTimeBeforeAnyMark() {
        Half first = new Half("family: [4BA]", VALUE.replace(", VOLUMETRIC_EXPANSION: P3Y", ""), "");
        Half expansion = new Half("family: [4BA]", VALUE.replace("first: P3Y, ", ""), "");
        Half visual = new Half("family: [4BA]", "{from: 2000-01-01, periods: {EXTERNAL_VISUAL: P5Y}, CITED}", "");
        Half any = new Half("family: [4BA]", "{from: 2000-01-01, periods: {any: P5Y}, CITED}", "");
        Half never = new Half("family: [4BA]", "{from: 2000-01-01, notRequired: true, CITED}", "");
        passes(first, expansion);
        passes(expansion, visual);
        passes(first, any);
        refused(expansion, any);
        refused(visual, any);
        refused(Half.of("family: [4BA]"), first);
        refused(never, visual);
    }

    @Test
    void time() {
        Half until = new Half("family: [4BA]", VALUE.replace("2000-01-01, p", "2000-01-01, until: 2010-01-01, p"), "");
        Half next = new Half("family: [4BA]", VALUE.replace("from: 2000", "from: 2010"), "");
        Half dayEarlier = new Half("family: [4BA]", VALUE.replace("from: 2000-01-01", "from: 2009-12-31"), "");
        passes(until, next);
        refused(until, dayEarlier);
    }

    @Test
    void precedenceAndPlaceDecide() {
        passes(Half.of("family: [4BA]"), new Half("family: [4BA]", VALUE, "    precedence: 10\n"));
        String one = file("ZZ", Half.of("family: [4BA]").rule("zz.one"));
        String province = file("ZZ-YY", Half.of("family: [4BA]").rule("zz-yy.one"));
        String abroad = file("YY", Half.of("family: [4BA]").rule("yy.one"));
        assertThat(RuleBookLoader.of(Map.of("a", one, "b", abroad)).rules()).hasSize(2);
        assertThatThrownBy(() -> RuleBookLoader.of(Map.of("a", one, "b", province)))
                .as("a province's container is under both").isInstanceOf(RuleBookException.class);
    }

    @Test
    void theShippedBookPasses() {
        assertThat(RuleBookLoader.standard().rules()).isNotEmpty();
    }
}
