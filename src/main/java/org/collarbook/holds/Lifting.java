package org.collarbook.holds;

import java.util.Set;

import org.jspecify.annotations.Nullable;

/** What became of the lifting of a hold. */
public sealed interface Lifting {

    /** Who says that the hold's reason is gone. */
    sealed interface Way {

        record CompetentPerson(String name, String qualification) implements Way {}

        record Clerk() implements Way {}

        default LiftedBy kind() {
            return switch (this) {
                case CompetentPerson _ -> LiftedBy.COMPETENT_PERSON;
                case Clerk() -> LiftedBy.CLERK;
            };
        }

        default @Nullable String person() {
            return this instanceof CompetentPerson(var name, var _) ? name : null;
        }

        default @Nullable String qualification() {
            return this instanceof CompetentPerson(var _, var qualification) ? qualification : null;
        }
    }

    record Lifted(Hold hold) implements Lifting {}

    record AlreadyLifted(Hold hold) implements Lifting {}

    record NotLiftedSo(Hold hold, Set<LiftedBy> liftedBy) implements Lifting {

        public NotLiftedSo {
            liftedBy = Set.copyOf(liftedBy);
        }
    }

    record UnknownHold() implements Lifting {}
}
