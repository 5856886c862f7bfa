package org.collarbook.platform.database;

import org.jspecify.annotations.Nullable;
import org.springframework.boot.diagnostics.FailureAnalysis;
import org.springframework.boot.diagnostics.FailureAnalyzer;

/** Prints the one sentence that matters instead of a stack trace. */
class DatabaseFailureAnalyzer implements FailureAnalyzer {

    @Override
    public @Nullable FailureAnalysis analyze(Throwable failure) {
        for (var cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof DatabaseFolderException || cause instanceof UnsuitableDatabaseException) {
                return new FailureAnalysis(cause.getMessage(), null, cause);
            }
        }
        return null;
    }
}
