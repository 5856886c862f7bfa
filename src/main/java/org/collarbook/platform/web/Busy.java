package org.collarbook.platform.web;

import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;

import org.collarbook.platform.Problem;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** More requests at once than there are connections to the database, or one that takes too long: come again. */
final class Busy {

    static final String SECONDS = "1";
    static final Problem TOO_MANY_BODIES = Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY",
            "As many bodies of requests as may are on their way at this moment. Nothing of this one was stored: send it"
                    + " again.");

    /** PostgreSQL's error codes; query_canceled is by {@code statement_timeout}. */
    private static final String ENDED = "57014";
    private static final String DEADLOCK = "40P01";
    private static final String SERIALIZATION = "40001";
    private static final String AGAIN = " Nothing of this request was stored: repeat it, with the same Idempotency-Key"
            + " if it had one.";
    private static final Problem NO_CONNECTION = Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY",
            "All connections to the database are in use." + AGAIN);
    private static final Problem TOO_LONG = Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "TOO_LONG",
            "The database did not come to an end of this in the time that a request may take, or waited for what"
                    + " somebody else had in hand." + AGAIN);

    private static final Problem CROSSED = Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY",
            "This and another change of the same moment waited for each other." + AGAIN);

    private Busy() {}

    /** What to answer to a failure of this kind, if it is one. */
    static Optional<Problem> in(Throwable failure) {
        for (var cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLTransientConnectionException) {
                return Optional.of(NO_CONNECTION);
            }
            if (cause instanceof SQLException ended && ended.getSQLState() != null) {
                return switch (ended.getSQLState()) {
                    case ENDED -> Optional.of(TOO_LONG);
                    case DEADLOCK, SERIALIZATION -> Optional.of(CROSSED);
                    default -> Optional.empty();
                };
            }
        }
        return Optional.empty();
    }

    /** With when to come again. */
    static ResponseEntity<Object> answer(Problem problem) {
        return ResponseEntity.status(problem.status()).header(HttpHeaders.RETRY_AFTER, SECONDS)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON).body(problem.body());
    }
}
