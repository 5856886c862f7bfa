package org.collarbook.platform;

import java.io.IOException;
import java.time.Duration;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

import jakarta.servlet.http.HttpServletRequest;

/**
 * Lists that are sent as they are read from the database, as long as somebody reads. So many at once, since each keeps a
 * connection from those who fill and dispatch; and not to HTTP/1.0, where the end of the connection is the end of the
 * list: one that was broken off would look whole.
 */
@Component
public class LongAnswers {

    private static final Duration PATIENCE = Duration.ofSeconds(2);

    private final Turns turns;

    LongAnswers(@Value("${collarbook.answers.long-at-once:8}") int atOnce) {
        turns = new Turns(atOnce, PATIENCE,
                "As many long lists as may are being sent at this moment. Ask again soon, or have"
                        + " it made as an export.");
    }

    /** What sends one. */
    public interface Sending {
        void send() throws IOException;
    }

    public void send(HttpServletRequest request, Sending sending) throws IOException {
        if ("HTTP/1.0".equals(request.getProtocol())) {
            throw Problem.of(HttpStatus.HTTP_VERSION_NOT_SUPPORTED, "HTTP_VERSION", "A list of unknown length is sent"
                    + " over HTTP/1.1 or later only, where one that was broken off does not look whole. Ask again so; a"
                    + " proxy may have to be told to.").asException();
        }
        try (var _ = turns.take()) {
            sending.send();
        }
    }
}
