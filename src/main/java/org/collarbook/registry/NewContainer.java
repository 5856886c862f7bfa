package org.collarbook.registry;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/**
 * A container as it is to stand in the register; {@code declared} are those of its facts that rest on the declaration, or
 * on {@code further} ones.
 */
public record NewContainer(Marks marks, Particulars particulars, @Nullable Tag tag, @Nullable UUID declaration,
        Set<DeclarableFact> declared, Further further) {

    public NewContainer {
        declared = Set.copyOf(declared);
        if (!declared.containsAll(further.declared().keySet())
                || declaration == null && !further.declared().keySet().containsAll(declared)) {
            throw new IllegalArgumentException("facts " + declared + " are said to be declared, by no declaration");
        }
    }

    public NewContainer(Marks marks, Particulars particulars, @Nullable Tag tag, @Nullable UUID declaration,
            Set<DeclarableFact> declared) {
        this(marks, particulars, tag, declaration, declared, Further.NONE);
    }

    public static NewContainer of(Marks marks, Particulars particulars, @Nullable Tag tag) {
        return new NewContainer(marks, particulars, tag, null, Set.of());
    }

    /**
     * As a correction of what is recorded: a value given again in its plain form keeps its stamp, and a declared fact
     * given again the same still rests on its declaration.
     */
    NewContainer correcting(RegisteredContainer before) {
        var same = EnumSet.noneOf(DeclarableFact.class);
        before.declared().stream()
                .filter(fact -> Objects.equals(fact.of(before.particulars()), fact.of(particulars)))
                .forEach(same::add);
        var further = before.further().of(same);
        return new NewContainer(marks.keepingStampsOf(before.marks()), particulars, tag,
                further.declared().keySet().containsAll(same) ? null : before.declaration(), same, further);
    }

    /** With these facts as the declaration says them, which nothing else tells. */
    public NewContainer declared(Declaration said, Set<DeclarableFact> facts) {
        var all = new HashSet<>(declared);
        all.addAll(facts);
        return new NewContainer(marks, particulars.completedBy(said.of(facts)).particulars(), tag, declaration, all,
                further.with(said, facts));
    }

    /** Another state of the container: what rested on a declaration of its own, and is the same, rests on that one. */
    public static NewContainer following(RegisteredContainer before, Marks marks, Particulars particulars,
            @Nullable Tag tag, @Nullable UUID declaration, Set<DeclarableFact> declared) {
        var all = new HashSet<>(declared);
        if (before.further().jurisdiction() != null) {
            all.add(DeclarableFact.JURISDICTION);
        }
        var same = all.stream()
                .filter(fact -> Objects.equals(fact.of(before.particulars()), fact.of(particulars)))
                .collect(Collectors.toSet());
        return new NewContainer(marks, particulars, tag, declaration, all, before.further().of(same));
    }
}
