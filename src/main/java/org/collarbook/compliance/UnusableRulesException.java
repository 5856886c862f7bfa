package org.collarbook.compliance;

import org.jspecify.annotations.Nullable;

/** The folder of rules that was named cannot be used; the service does not start on other rules instead. */
class UnusableRulesException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    UnusableRulesException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
