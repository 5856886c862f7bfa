package org.collarbook.compliance;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Prints which file, rule and field it is, instead of a stack trace. */
class UnusableRulesAnalyzer extends AbstractFailureAnalyzer<UnusableRulesException> {

    @Override
    protected @Nullable FailureAnalysis analyze(Throwable failure, UnusableRulesException cause) {
        return new FailureAnalysis(cause.getMessage(),
                "Correct the file, or leave collarbook.rules out to use the rules that ship with the service.", cause);
    }
}
