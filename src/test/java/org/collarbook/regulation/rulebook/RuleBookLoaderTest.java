package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RuleBookLoaderTest {

    private static final String FILE = "zz/frozen.yaml";
    private static final String FROZEN = RuleBookLoader.shipped("rulebook-frozen/").get(FILE);

    private static RuleBook load(String text) {
        return RuleBookLoader.of(Map.of(FILE, text));
    }

    @Test
    void theHashIsOfTheContentAndNotOfTheLayout() {
        RuleBook book = load(FROZEN);
        assertThat(book.hash()).matches("sha256:[0-9a-f]{64}");
        assertThat(load("# a remark\n" + FROZEN.replace("  - id", "\n  - id")).hash()).isEqualTo(book.hash());
        assertThat(load(FROZEN.replace("P10Y", "P11Y")).hash()).isNotEqualTo(book.hash());
        assertThat(load(FROZEN.replace("2030-01-01", "2031-01-01")).hash()).isNotEqualTo(book.hash());
    }

    @Test
    void aStoredBookIsTheSameBook() {
        for (RuleBook book : List.of(load(FROZEN), RuleBookLoader.standard())) {
            RuleBook stored = RuleBookLoader.ofStored(book.canonicalText(), book.engineVersion());
            assertThat(stored.hash()).isEqualTo(book.hash());
            assertThat(stored.canonicalText()).isEqualTo(book.canonicalText());
            assertThat(stored.rules()).isEqualTo(book.rules());
        }
    }

    /** Each is refused, and the message names file, rule where there is one, and field. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"url: https://example.org/code|urn: x|sources.code.url: missing",
            "basis: MEMORY|basis: HEARSAY|zz.lined.values[0].citation.basis: found 'HEARSAY'",
            "inForceFrom: 2010-01-01, |''|zz.made.values[1].citation.inForceFrom: missing",
            "lastConfirmed: 2026-01-01|lastConfirmed: soon|lastConfirmed: found 'soon'",
            "precedence: 10|precedenc: 10|zz.lined.precedenc: unknown field",
            "lined: true|lind: true|zz.lined.applies.lind: unknown condition",
            "lined: true|lined: maybe|zz.lined.applies.lined: found 'maybe'",
            "P10Y|10|zz.lined.values[0].periods", "sets: SHELL|sets: SHALL|zz.base.sets: found 'SHALL'",
            "until: 2030-01-01|until: 2031-01-01|is in force together with values[0]",
            "until: 2030-01-01|until: 1999-01-01|zz.base.values[0].until: expected a day after 2000-01-01",
            "id: zz.lined|id: zz.base|zz.base: this id is taken already",
            "matching: {asOf|matched: {asOf|zz.base.examples.matching: missing",
            "gives: 2023-01|given: 2023-01|zz.base.examples.matching.gives: missing",
            "kind: [CYLINDER], family: [4BA]}|family: [4BA]}|zz.base.applies.kind: missing",
            "source: code|source: cod|citation.source: found 'cod'",
            "selectedBy: MANUFACTURE|selectedBy: MOON|zz.made.selectedBy: found 'MOON'",
            "jurisdiction: ZZ|jurisdiction: here|zz/frozen.yaml.jurisdiction: found 'here'"})
    void refusesWithFileRuleAndField(String found, String replaced, String message) {
        String broken = FROZEN.replace(found, replaced);
        assertThat(broken).isNotEqualTo(FROZEN);
        assertThatThrownBy(() -> load(broken)).isInstanceOf(RuleBookException.class).hasMessageContaining(FILE)
                .hasMessageContaining(message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"rules: [", "- a", "", "subject: a\nsubject: b"})
    void refusesWhatIsNoRuleFile(String text) {
        assertThatThrownBy(() -> load(text)).isInstanceOf(RuleBookException.class).hasMessageContaining(FILE);
    }

    @Test
    void theIndexListsEveryFile() throws IOException {
        Path folder = Path.of("src/main/resources/regulations");
        try (Stream<Path> files = Files.walk(folder)) {
            assertThat(RuleBookLoader.shipped("regulations/").keySet()).containsExactlyInAnyOrderElementsOf(files
                    .filter(
                            file -> file.toString().endsWith(".yaml"))
                    .map(file -> folder.relativize(file).toString().replace('\\',
                            '/'))
                    .toList());
        }
    }

    /** Only what was read or quoted is on by default; the rest by name. */
    @Test
    void nothingFromMemoryIsOnByDefault() {
        assertThat(Stream.of(Basis.values()).filter(Basis::onByDefault)).containsExactly(Basis.TEXT, Basis.QUOTED);
        assertThat(RuleBookLoader.standard().rules().stream().flatMap(rule -> rule.values().stream()).map(
                value -> value.citation().basis())).contains(Basis.MEMORY, Basis.SECONDARY, Basis.TEXT, Basis.QUOTED);
    }

    @Test
    void everyRuleSaysWhatItIs() {
        Map<String, RuleInfo> rules = new TreeMap<>();
        RuleBookLoader.standard().rules().forEach(rule -> rules.put(rule.id(), rule));
        assertThat(rules).hasSizeGreaterThan(40).allSatisfy((id, rule) -> {
            assertThat(rule.title()).isNotBlank();
            assertThat(rule.values()).allSatisfy(value -> {
                assertThat(value.value()).as(id).isNotBlank().doesNotContain("@");
                assertThat(value.citation().inForceFrom()).as(id).isEqualTo(value.from());
            });
        });
    }
}
