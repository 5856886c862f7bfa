package org.collarbook.registry;

import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A container as it is to stand in the register; {@code declared} are those of its facts that rest on the declaration. */
public record NewContainer(Marks marks, Particulars particulars, @Nullable Tag tag, @Nullable UUID declaration,
        Set<DeclarableFact> declared) {

    public NewContainer {
        declared = Set.copyOf(declared);
        if (!declared.isEmpty() && declaration == null) {
            throw new IllegalArgumentException("facts " + declared + " are said to be declared, by no declaration");
        }
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
        return new NewContainer(marks.keepingStampsOf(before.marks()), particulars, tag,
                same.isEmpty() ? null : before.declaration(), same);
    }
}
