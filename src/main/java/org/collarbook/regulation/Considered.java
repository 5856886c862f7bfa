package org.collarbook.regulation;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** One rule that was looked at for an assessment, and what became of it; every condition is told as far as it was read. */
public record Considered(String ruleId, String title, Jurisdiction jurisdiction, String topic, Verdict verdict,
        @Nullable String value, List<Condition> conditions, @Nullable Citation citation) {

    public enum Verdict {
        /** It gave the answer to its question. */
        GOVERNS,
        /** It applies, and another of higher precedence answered. */
        OUTRANKED,
        /** A condition fails. */
        DOES_NOT_APPLY,
        /** It may apply: a fact is not known, or two facts contradict each other. */
        CANNOT_TELL,
        /** It speaks of other kinds, specifications or authorities. */
        OF_OTHER_CONTAINERS,
        /** It says nothing of the mark that governs, or of the time before any mark. */
        OF_OTHER_METHODS,
        NOT_IN_FORCE,
        /** It applies, and nothing in the answer hangs on it: what it allows, notes or cites did not come up. */
        NOT_ASKED,
        /** It would apply; its text was not read, and it was not asked for by name. */
        SWITCHED_OFF
    }

    public enum Answer {
        YES,
        NO,
        UNKNOWN
    }

    /**
     * A condition as the rule words it, the fact it reads, and what the facts say. One that begins with {@code requires}
     * is what the rule demands of a container to which it applies: NO is its refusal.
     */
    public record Condition(String condition, String fact, Answer holds) {}
}
