package org.collarbook.regulation;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/** One requirement with its outcome, the rule that gave it and the facts it used; no rule when none is held. */
public record Clock(Requirement requirement, Outcome outcome, @Nullable String ruleId, @Nullable Citation citation,
        Set<Fact> factsUsed) {}
