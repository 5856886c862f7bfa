package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.context.runner.ApplicationContextRunner;

/** Rules from a folder: taken whole, or the start is refused with what is wrong and where. */
class RuleFolderTests {

    private static final String FILE = "us/49cfr-180.201.yaml";

    @TempDir
    private Path folder;

    private void copy() throws IOException {
        for (var file : RuleBookLoader.shipped("regulations/").entrySet()) {
            Files.createDirectories(folder.resolve(file.getKey()).getParent());
            Files.writeString(folder.resolve(file.getKey()), file.getValue());
        }
    }

    private void edit(String found, String replaced) throws IOException {
        var text = Files.readString(folder.resolve(FILE));
        assertThat(text).contains(found);
        Files.writeString(folder.resolve(FILE), text.replace(found, replaced));
    }

    private ApplicationContextRunner start() {
        return new ApplicationContextRunner().withUserConfiguration(RuleBookConfiguration.class);
    }

    @Test
    void theSameFilesAreTheSameBook() throws IOException {
        copy();
        Files.writeString(folder.resolve("us/.49cfr-180.201.yaml"), "an editor's copy");
        Files.createDirectories(folder.resolve("..2026_11_25"));
        Files.writeString(folder.resolve("..2026_11_25/copy.yaml"), "what a mounted link points to");
        Files.writeString(folder.resolve("notes.txt"), "no rule");
        start().withPropertyValues("collarbook.rules=" + folder).run(context -> assertThat(context.getBean(
                RuleBook.class).hash()).isEqualTo(RuleBookLoader.standard().hash()));
        start().run(context -> assertThat(context.getBean(RuleBook.class).hash())
                .isEqualTo(RuleBookLoader.standard().hash()));
    }

    /** The message names the folder, the file, the rule, the field, what was found and what is accepted. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "basis: TEXT|basis: HEARSAY|us.180.201.asme.values[0].citation.basis: found 'HEARSAY', expected one of [TEXT, QUOTED",
            "title: |titel: |us.180.201.asme.title: missing, expected a text",
            "kind: [|kinds: [|us.180.201.asme.applies.kind: missing, expected of [CYLINDER",
            "from: |form: |us.180.201.asme.values[0].from: missing, expected a date such as 2020-11-30",
            "inForceFrom: |inForceSince: |us.180.201.asme.values[0].citation.inForceFrom: missing, expected a date"})
    void aBadFileStopsTheStart(String found, String replaced, String message) throws IOException {
        copy();
        edit(found, replaced);
        start().withPropertyValues("collarbook.rules=" + folder).run(context -> {
            assertThat(context).hasFailed();
            var told = new UnusableRulesAnalyzer().analyze(context.getStartupFailure());
            assertThat(told).isNotNull();
            assertThat(told.getDescription()).startsWith("collarbook.rules=" + folder + ": " + FILE)
                    .contains(message);
            assertThat(told.getAction()).contains("leave collarbook.rules out");
        });
    }

    @Test
    void unknownFieldsAndMethodsSayWhatIsKnown() throws IOException {
        copy();
        edit("sets: SHELL", "sets: SHELL\n    presedence: 3");
        assertThatThrownBy(() -> new RuleFolder(folder).load(java.util.Set.of())).hasMessageContaining(
                "us.180.201.asme.presedence: unknown field, expected only [").hasMessageContaining("precedence");
    }

    @Test
    void aFolderThatIsNoneOrEmptyOrNotTextStopsTheStart() throws IOException {
        assertThatThrownBy(() -> new RuleFolder(folder.resolve("nowhere")).load(java.util.Set.of()))
                .isInstanceOf(UnusableRulesException.class).hasMessageContaining("no such folder");
        assertThatThrownBy(() -> new RuleFolder(folder).load(java.util.Set.of()))
                .isInstanceOf(UnusableRulesException.class)
                .hasMessageContaining("no rule file");
        Files.write(folder.resolve("latin.yaml"), "subject: Prüfung".getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> new RuleFolder(folder).load(java.util.Set.of()))
                .isInstanceOf(UnusableRulesException.class)
                .hasMessageContaining("latin.yaml").hasMessageContaining("UTF-8");
    }
}
