package org.collarbook.platform;

/** Carries a {@link Problem} from where it was found to the edge, and rolls the transaction back on the way. */
public final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    public ProblemException(Problem problem) {
        super(problem.code() + ": " + problem.detail() + (problem.errors().isEmpty() ? "" : " " + problem.errors()));
        this.problem = problem;
    }

    public Problem problem() {
        return problem;
    }
}
