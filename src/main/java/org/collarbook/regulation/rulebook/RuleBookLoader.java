package org.collarbook.regulation.rulebook;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.NotHeld;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.engine.CompiledRuleBook;
import org.collarbook.regulation.engine.Rule;

/** Loads the rule book that ships with the service, or one that was stored. */
public final class RuleBookLoader {

    private static final String FOLDER = "regulations/";

    private RuleBookLoader() {}

    /** The book that ships with the service. */
    public static RuleBook standard() {
        return standard(Set.of());
    }

    /** The same with what is otherwise off switched on for every assessment: rule ids, or names of {@link Basis}. */
    public static RuleBook standard(Set<String> enabled) {
        return of(shipped(FOLDER), enabled);
    }

    /** A book from the texts of its files, by file name. */
    public static RuleBook of(Map<String, String> files) {
        return of(files, Set.of());
    }

    public static RuleBook of(Map<String, String> files, Set<String> enabled) {
        return compile(parse(files), enabled);
    }

    /**
     * A book from a stored {@link RuleBook#canonicalText()}, with what was switched on by name, as the stored
     * {@link RuleBook#engineVersion()} tells it.
     */
    public static RuleBook ofStored(String text, String engineVersion) {
        Map<String, Map<?, ?>> files = new TreeMap<>();
        Yaml.read("stored rule book", text).forEach((name, content) -> {
            if (!(content instanceof Map<?, ?> map)) {
                throw new RuleBookException("stored rule book", "expected a mapping under " + name);
            }
            files.put(String.valueOf(name), map);
        });
        return compile(files, CompiledRuleBook.enabledIn(engineVersion));
    }

    /** The examples of every rule in these files. */
    public static List<RuleExample> examples(Map<String, String> files) {
        List<RuleExample> examples = new ArrayList<>();
        for (RuleReader.Read rule : rules(parse(files))) {
            examples.add(rule.matching());
            examples.add(rule.nonMatching());
        }
        return examples;
    }

    /** The files of the book that ships with the service, by name, as its {@code index.txt} lists them. */
    public static Map<String, String> shipped(String folder) {
        Map<String, String> files = new TreeMap<>();
        resource(folder + "index.txt").lines().filter(line -> !line.isBlank()).forEach(name -> files.put(name.strip(),
                resource(folder + name.strip())));
        return files;
    }

    static String resource(String path) {
        try (InputStream in = RuleBookLoader.class.getClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new RuleBookException(path, "not found on the classpath");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(path, unreadable);
        }
    }

    private static Map<String, Map<?, ?>> parse(Map<String, String> files) {
        Map<String, Map<?, ?>> parsed = new TreeMap<>();
        files.forEach((name, text) -> parsed.put(name, Yaml.read(name, text)));
        return parsed;
    }

    private static List<RuleReader.Read> rules(Map<String, Map<?, ?>> files) {
        return read(files, new ArrayList<>(), Set.of());
    }

    private static List<RuleReader.Read> read(Map<String, Map<?, ?>> files, List<NotHeld> notHeld,
            Set<String> enabled) {
        List<RuleReader.Read> rules = new ArrayList<>();
        Set<String> ids = new HashSet<>();
        files.forEach((name, content) -> {
            Fields file = new Fields(name, content);
            Jurisdiction jurisdiction = file.required("jurisdiction", "a jurisdiction such as US", Jurisdiction::new);
            file.text("subject");
            ValueReader values = new ValueReader(new CitationReader(file.child("sources")), enabled);
            RuleReader reader = new RuleReader(jurisdiction, values);
            for (Fields rule : file.children("rules")) {
                RuleReader.Read read = reader.read(name, rule);
                if (!ids.add(read.info().id())) {
                    throw new RuleBookException(name + ": " + read.info().id(), "this id is taken already");
                }
                rules.add(read);
            }
            if (file.has("notHeld")) {
                file.children("notHeld").forEach(one -> notHeld.add(notHeld(jurisdiction, one)));
            }
            file.done();
        });
        refuseConflicts(rules);
        refuseUnknown(enabled, ids);
        return rules;
    }

    private static NotHeld notHeld(Jurisdiction jurisdiction, Fields fields) {
        NotHeld read = new NotHeld(jurisdiction, fields.text("section"), fields.text("what"), fields.text("why"));
        fields.done();
        return read;
    }

    /** Two rules may not answer one requirement of one container with nothing to say which goes first. */
    private static void refuseConflicts(List<RuleReader.Read> rules) {
        List<Claim> claims = rules.stream().flatMap(rule -> rule.claims().stream()).toList();
        for (int i = 0; i < claims.size(); i++) {
            for (int j = i + 1; j < claims.size(); j++) {
                if (claims.get(i).conflictsWith(claims.get(j))) {
                    throw new RuleBookException(claims.get(i).head().id(), "has the precedence of "
                            + claims.get(j).head().id() + ", and both may answer " + claims.get(i).requirement());
                }
            }
        }
    }

    private static void refuseUnknown(Set<String> enabled, Set<String> ids) {
        for (String name : enabled) {
            if (!ids.contains(name) && Arrays.stream(Basis.values()).noneMatch(basis -> basis.name().equals(name))) {
                throw new RuleBookException("enable", "found '" + name + "', expected a rule's id or one of "
                        + Arrays.toString(Basis.values()));
            }
        }
    }

    private static RuleBook compile(Map<String, Map<?, ?>> files, Set<String> enabled) {
        List<NotHeld> notHeld = new ArrayList<>();
        List<RuleReader.Read> read = read(files, notHeld, enabled);
        List<Rule> rules = read.stream().map(RuleReader.Read::rule).toList();
        List<RuleInfo> infos = read.stream().map(RuleReader.Read::info).toList();
        String text = Canonical.text(files);
        return new CompiledRuleBook(rules, new CompiledRuleBook.Listing(infos, List.copyOf(notHeld)),
                Canonical.hash(text), text, enabled);
    }
}
