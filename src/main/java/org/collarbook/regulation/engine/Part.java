package org.collarbook.regulation.engine;

import java.util.Set;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;

/** What a rule does. */
public sealed interface Part {

    enum Allows {
        FILL,
        CARRY,
        USE;

        final int bit = 1 << ordinal();
        static final int ALL = FILL.bit | CARRY.bit | USE.bit;

        static int bits(Set<Allows> these) {
            return these.stream().mapToInt(one -> one.bit).sum();
        }
    }

    /** The questions that must each be answered before anything may be filled. */
    enum Topic {
        REFILLABLE,
        AUTHORISED,
        SERVICE_PRESSURE,
        MARKS,
        CONSENT,
        CONDITION
    }

    enum Relief {
        /** Filled before it fell due. */
        FILLED_IN_TIME,
        /** Past its date, whenever it was filled. */
        OVERDUE,
        /** A tank that otherwise stays where it is. */
        MOVE
    }

    /** Runs a clock; while it is overdue or cannot be told, what it bars is refused. */
    record Sets(Requirement requirement, int bars) implements Part {

        public Sets(Requirement requirement, Set<Allows> bars) {
            this(requirement, Allows.bits(bars));
        }
    }

    /** Asks a question; its refusal forbids, and a fact that is not known bars {@code unknownForbids}. */
    record Asks(Topic question, int forbids, int unknownForbids) implements Part {

        public Asks(Topic question, Set<Allows> forbids, Set<Allows> unknownForbids) {
            this(question, Allows.bits(forbids), Allows.bits(unknownForbids));
        }
    }

    /** Gives back what would be refused. */
    record Relieves(Relief relief, int allows) implements Part {

        public Relieves(Relief relief, Set<Allows> allows) {
            this(relief, Allows.bits(allows));
        }
    }

    /** Says something about a clock that runs from a mark, and decides nothing. */
    record Notes(ReasonCode code, Requirement about) implements Part {}

    /** Says where a reason stands in the text. */
    record Cites(Set<ReasonCode> codes) implements Part {

        public Cites {
            codes = Set.copyOf(codes);
        }
    }

    record Limits() implements Part {}

    /** What a site is expected to have beside a tank to which the rule applies. */
    enum Equipment {
        EXTINGUISHER
    }

    record Expects(Equipment what) implements Part {}

    /** The name under which it is listed. */
    default String topic() {
        return switch (this) {
            case Sets sets -> sets.requirement().name();
            case Asks asks -> asks.question().name();
            case Relieves relieves -> relieves.relief().name();
            case Notes notes -> notes.code().name();
            case Cites _ -> "CITATION";
            case Limits _ -> "FILLING_DENSITY";
            case Expects expects -> "SITE_" + expects.what().name();
        };
    }
}
