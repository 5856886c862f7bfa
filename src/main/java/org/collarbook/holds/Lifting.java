package org.collarbook.holds;

import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** What became of the lifting of a hold. */
public sealed interface Lifting {

    /** Who says that the hold's reason is gone. */
    sealed interface Way {

        record CompetentPerson(String name, String qualification) implements Way {}

        record Clerk() implements Way {}

        /** A test of the hold's day or later, of which it is said that it came after. */
        record Requalification(UUID id) implements Way {}

        default LiftedBy kind() {
            return switch (this) {
                case CompetentPerson _ -> LiftedBy.COMPETENT_PERSON;
                case Clerk() -> LiftedBy.CLERK;
                case Requalification _ -> LiftedBy.REQUALIFICATION;
            };
        }

        default @Nullable UUID requalification() {
            return this instanceof Requalification(var id) ? id : null;
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

    /** The test that was named does not lift this hold. */
    record NotAnswered(Hold hold) implements Lifting {}

    record UnknownHold() implements Lifting {}
}
