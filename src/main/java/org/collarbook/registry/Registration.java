package org.collarbook.registry;

import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import org.collarbook.platform.Problem;

/** What became of a container handed in for registration. */
public sealed interface Registration {

    record Registered(UUID id) implements Registration {}

    /** Nothing was stored. */
    sealed interface Refused extends Registration {

        RegisteredContainer other();

        Problem problem();
    }

    /** The marks are already in the register: never merged, the person decides. */
    record SameNaturalKey(RegisteredContainer other, List<Difference> toldApartBy, @Nullable UUID mergedInto)
            implements Refused {

        @Override
        public Problem problem() {
            var problem = Problem.conflict("NATURAL_KEY_TAKEN", "Container " + other.id() + " already bears these marks"
                    + " (specification, maker, serial and month of original test). Nothing was stored and nothing"
                    + " merged: compare the two, and correct the one that was misread.")
                    .with("container", Described.named(other)).with("toldApartBy", toldApartBy);
            return mergedInto == null ? problem : problem.with("mergedInto", mergedInto);
        }
    }

    record TagInUse(RegisteredContainer other, @Nullable UUID mergedInto) implements Refused {

        @Override
        public Problem problem() {
            var problem = Problem
                    .conflict("TAG_IN_USE", "Container " + other.id() + " has this tag. Nothing was stored:"
                            + " scan again, or take the tag off the other first.")
                    .with("container", Described.named(other));
            return mergedInto == null ? problem : problem.with("mergedInto", mergedInto);
        }
    }
}
