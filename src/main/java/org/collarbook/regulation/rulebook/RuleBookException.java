package org.collarbook.regulation.rulebook;

/** A rule file that cannot be taken; the message names the file, the rule and the field. */
public final class RuleBookException extends RuntimeException {

    RuleBookException(String path, String problem) {
        super(path + ": " + problem);
    }

    RuleBookException(String path, String problem, Throwable cause) {
        super(path + ": " + problem, cause);
    }
}
