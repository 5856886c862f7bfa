package org.collarbook.registry;

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
}
