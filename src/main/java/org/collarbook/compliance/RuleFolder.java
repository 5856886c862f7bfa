package org.collarbook.compliance;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.StreamSupport;

import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookException;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.jspecify.annotations.Nullable;

/** A folder of rule files that is used in place of the rules that ship with the service. */
record RuleFolder(Path path) {

    private static final String SUFFIX = ".yaml";

    /** Every file in it counts; a single one that cannot be taken stops the start, for half a rule book is none. */
    RuleBook load(Set<String> enabled) {
        var files = new TreeMap<String, String>();
        for (var file : files()) {
            files.put(path.relativize(file).toString().replace('\\', '/'), text(file));
        }
        if (files.isEmpty()) {
            throw refused("found no rule file in it, expected a folder with at least one file *" + SUFFIX, null);
        }
        return load(files, enabled);
    }

    private RuleBook load(Map<String, String> files, Set<String> enabled) {
        try {
            return RuleBookLoader.of(files, enabled);
        } catch (RuleBookException bad) {
            throw refused(String.valueOf(bad.getMessage()), bad);
        }
    }

    private List<Path> files() {
        if (!Files.isDirectory(path)) {
            throw refused("no such folder, expected one with rule files *" + SUFFIX, null);
        }
        try (var found = Files.walk(path)) {
            return found.filter(file -> file.toString().endsWith(SUFFIX) && !isHidden(file)
                    && Files.isRegularFile(file)).sorted().toList();
        } catch (IOException | UncheckedIOException unreadable) {
            throw refused("cannot be read: " + unreadable.getMessage(), unreadable);
        }
    }

    /** An editor's copies, and the copies behind the links that a mounted configuration consists of. */
    private boolean isHidden(Path file) {
        return StreamSupport.stream(path.relativize(file).spliterator(), false)
                .anyMatch(step -> step.toString().startsWith("."));
    }

    private String text(Path file) {
        try {
            return Files.readString(file);
        } catch (CharacterCodingException notUtf8) {
            throw refused(path.relativize(file) + ": not readable, expected text in UTF-8", notUtf8);
        } catch (IOException unreadable) {
            throw refused(path.relativize(file) + ": cannot be read: " + unreadable.getMessage(), unreadable);
        }
    }

    private UnusableRulesException refused(String why, @Nullable Throwable cause) {
        return new UnusableRulesException("collarbook.rules=" + path + ": " + why, cause);
    }
}
