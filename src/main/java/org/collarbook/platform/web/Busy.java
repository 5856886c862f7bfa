package org.collarbook.platform.web;

import java.sql.SQLTransientConnectionException;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;

/** More requests at once than there are connections to the database: who had to wait too long is told to come again. */
final class Busy {

    static final String SECONDS = "1";
    static final Problem TOO_MANY_FORMS = Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY",
            "As many ledgers as may are being handed in at this moment. Nothing of this one was stored: send it again.");

    private Busy() {}

    static boolean isTold(@Nullable Throwable failure) {
        for (var cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLTransientConnectionException) {
                return true;
            }
        }
        return false;
    }

    static ResponseEntity<Object> answer() {
        return answer(Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY", "All connections to the database are in use."
                + " Nothing of this request was stored: repeat it, with the same Idempotency-Key if it had one."));
    }

    /** With when to come again. */
    static ResponseEntity<Object> answer(Problem problem) {
        return ResponseEntity.status(problem.status()).header(HttpHeaders.RETRY_AFTER, SECONDS)
                .contentType(MediaType.APPLICATION_PROBLEM_JSON).body(problem.body());
    }
}
