package org.collarbook.compliance.declarations;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.compliance.declarations.DeclarationAnswer.FactCounts;
import org.collarbook.compliance.declarations.PreviewAnswer.Fillable;
import org.collarbook.compliance.declarations.PreviewDeclaration.Contradiction;
import org.collarbook.platform.Caution;
import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaring;
import org.collarbook.regulation.Assessment;

/** Adds up what a declaration would do to one container after the other. */
final class PreviewSums {

    static final int LISTED = 100;

    private int containers;
    private int untouched;
    private FactCounts all = new FactCounts("", 0, 0, 0);
    private Fillable fillable = new Fillable(0, 0);
    private final Map<DeclarableFact, FactCounts> facts = new EnumMap<>(DeclarableFact.class);
    private final Map<String, Integer> before = new TreeMap<>();
    private final Map<String, Integer> after = new TreeMap<>();
    private final List<Contradiction> contradictions = new ArrayList<>();

    void add(UUID container, Declaring told, Assessment today, Assessment then) {
        containers++;
        all = all.plus(!told.filled().isEmpty(), !told.known().isEmpty(), !told.contradicting().isEmpty());
        if (told.filled().isEmpty() && told.known().isEmpty() && told.contradicting().isEmpty()) {
            untouched++;
        }
        for (var fact : DeclarableFact.values()) {
            facts.put(fact, facts.getOrDefault(fact, new FactCounts(fact.word(), 0, 0, 0))
                    .plus(told.filled().contains(fact), told.known().contains(fact),
                            told.contradicting().contains(fact)));
        }
        if (!told.contradicting().isEmpty() && contradictions.size() < LISTED) {
            contradictions.add(new Contradiction(container, told.contradicting().stream().sorted()
                    .map(DeclarableFact::word).toList()));
        }
        before.merge(today.status().name(), 1, Integer::sum);
        after.merge(then.status().name(), 1, Integer::sum);
        fillable = new Fillable(fillable.before() + (today.mayFill().allowed() ? 1 : 0),
                fillable.after() + (then.mayFill().allowed() ? 1 : 0));
    }

    PreviewAnswer answer() {
        return new PreviewAnswer(containers, all.filled(), all.known(), all.contradicting(), untouched,
                facts.values().stream().filter(fact -> fact.filled() + fact.known() + fact.contradicting() > 0)
                        .toList(),
                fillable, before, after, List.copyOf(contradictions), Caution.TEXT);
    }
}
