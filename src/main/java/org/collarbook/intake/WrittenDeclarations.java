package org.collarbook.intake;

import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;

/**
 * The declarations that facts of a container rest on: those of one person, day and statement as one, in the order of the
 * days.
 */
final class WrittenDeclarations {

    private record Words(String on, String by, String statement) {}

    private static final Comparator<Words> ORDER = Comparator.comparing(Words::on).thenComparing(Words::by)
            .thenComparing(Words::statement);

    private final Map<Words, Set<DeclarableFact>> facts = new TreeMap<>(ORDER);
    private final Set<Words> withTests = new HashSet<>();
    private final Map<UUID, Words> words = new HashMap<>();
    private @Nullable String jurisdiction;

    private WrittenDeclarations() {}

    /** {@code ungoverned}: which rules govern is not known, whatever was declared. */
    static WrittenDeclarations of(RegisteredContainer container, List<@Nullable String[]> rows, boolean ungoverned) {
        var written = new WrittenDeclarations();
        var governing = new HashMap<UUID, @Nullable String>();
        for (var row : rows) {
            var id = UUID.fromString(String.valueOf(row[0]));
            written.words.put(id, new Words(String.valueOf(row[2]), String.valueOf(row[1]), String.valueOf(row[3])));
            governing.put(id, row[4]);
        }
        var own = container.declaration();
        for (var fact : container.declared()) {
            if (fact != DeclarableFact.JURISDICTION) {
                written.add(container.further().declared().getOrDefault(fact, own), fact);
            }
        }
        // the one that it was registered under goes before others
        var ownWords = own == null ? null : governing.get(own);
        var further = container.further().jurisdiction();
        if (!ungoverned && (ownWords != null || further != null)) {
            written.jurisdiction = ownWords == null ? further.code() : ownWords;
            written.add(ownWords == null ? container.further().declared().get(DeclarableFact.JURISDICTION) : own,
                    DeclarableFact.JURISDICTION);
        }
        return written;
    }

    private void add(@Nullable UUID declaration, DeclarableFact fact) {
        facts.computeIfAbsent(words.get(declaration), said -> new TreeSet<>()).add(fact);
    }

    /** A test rests on it too. */
    void addTest(UUID declaration) {
        var said = words.get(declaration);
        facts.computeIfAbsent(said, one -> new TreeSet<>());
        withTests.add(said);
    }

    /** Which of the row's declarations it is, the first being 1, once all are added. */
    int number(UUID declaration) {
        return List.copyOf(facts.keySet()).indexOf(words.get(declaration)) + 1;
    }

    void put(Map<LedgerColumn, String> cells) {
        if (!facts.isEmpty()) {
            var told = facts.keySet();
            WrittenRow.put(cells, LedgerColumn.JURISDICTION, jurisdiction);
            cells.put(LedgerColumn.DECLARED, list(told.stream().map(this::facts)));
            cells.put(LedgerColumn.DECLARED_BY, list(told.stream().map(Words::by)));
            cells.put(LedgerColumn.DECLARED_ON, list(told.stream().map(Words::on)));
            cells.put(LedgerColumn.DECLARED_STATEMENT, list(told.stream().map(Words::statement)));
        }
    }

    private String facts(Words said) {
        var resting = facts.getOrDefault(said, Set.of()).stream().map(DeclarableFact::word);
        return Stream.concat(resting, withTests.contains(said) ? Stream.of(DeclaredReader.TESTS) : Stream.empty())
                .collect(Collectors.joining(", "));
    }

    private static String list(Stream<String> heads) {
        return ListItem.write(heads.map(List::of).toList());
    }
}
