package org.collarbook.regulation;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * One requirement under one jurisdiction's rules: what it says, the word that follows from it alone, the rule that gave
 * it and the facts it used; no rule when none is held.
 */
public record Clock(@Nullable Jurisdiction jurisdiction, Requirement requirement, Outcome outcome, Status status,
        @Nullable String ruleId, @Nullable Citation citation, Set<Fact> factsUsed) {}
