package org.collarbook.platform.web;

import java.io.IOException;
import java.time.Duration;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/** A body that is larger, or takes longer to arrive, than what is asked can need. */
final class BodyRefused extends IOException {

    private final transient Problem problem;

    private BodyRefused(Problem problem) {
        super(problem.detail());
        this.problem = problem;
    }

    static Problem tooLarge(long most) {
        return Problem.of(HttpStatus.CONTENT_TOO_LARGE, "BODY_TOO_LARGE",
                "The body may have " + most + " bytes here. Nothing of it was stored.").with("most", most);
    }

    static BodyRefused largerThan(long most) {
        return new BodyRefused(tooLarge(most));
    }

    static BodyRefused laterThan(Duration time) {
        return new BodyRefused(Problem.of(HttpStatus.REQUEST_TIMEOUT, "BODY_TOO_SLOW",
                "The body did not arrive within " + time.toSeconds() + " seconds. Nothing of it was stored."));
    }

    /** What is to be answered, if such a body is why something failed. */
    static @Nullable Problem in(@Nullable Throwable failure) {
        for (var cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof BodyRefused refused) {
                return refused.problem;
            }
        }
        return null;
    }
}
