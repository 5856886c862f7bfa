package org.collarbook.platform;

import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.json.JsonMapper;

/**
 * Runs a command once under the caller's {@code Idempotency-Key}: the answer is kept in the same transaction as what
 * the command did, so a repeat after a lost answer gets that answer and changes nothing.
 */
@Component
public class Idempotency {

    private static final int LONGEST = 200;

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final JsonMapper json;

    Idempotency(JdbcClient jdbc, TransactionTemplate transaction, JsonMapper json) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.json = json;
    }

    public ResponseEntity<?> once(@Nullable String key, UUID caller, String command, Object request,
            Supplier<? extends ResponseEntity<?>> work) {
        if (key == null) {
            return run(work);
        }
        refuseTooLong(key);
        var fingerprint = fingerprint(command, request);
        return run(() -> {
            jdbc.sql("select pg_advisory_xact_lock(hashtextextended(?, 0))").param(caller + key).query(String.class)
                    .optional();
            return stored(key, caller, fingerprint).orElseGet(() -> keep(key, caller, fingerprint, work.get()));
        });
    }

    /** The same, refusing a command without a key. */
    public ResponseEntity<?> requireOnce(@Nullable String key, UUID caller, String command, Object request,
            Supplier<? extends ResponseEntity<?>> work) {
        return once(required(key), caller, command, request, work);
    }

    private static String required(@Nullable String key) {
        if (key == null || key.isBlank()) {
            throw Problem.of(HttpStatus.BAD_REQUEST, "IDEMPOTENCY_KEY_REQUIRED",
                    "This command needs an Idempotency-Key header (a new UUID, say), so that it is safe to repeat.")
                    .asException();
        }
        return refuseTooLong(key);
    }

    private static String refuseTooLong(String key) {
        if (key.isBlank() || key.length() > LONGEST) {
            throw Problem.invalid("Idempotency-Key", "OUT_OF_RANGE", key, "1 to " + LONGEST + " characters")
                    .asException();
        }
        return key;
    }

    /**
     * Notes the key of a command that is safe to repeat by itself and so has no one answer to keep. Refuses a key that is
     * missing, and one that was used for another request.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void claim(@Nullable String key, UUID caller, String command, Object request) {
        var given = required(key);
        var fingerprint = fingerprint(command, request);
        jdbc.sql(
                "insert into idempotency (caller, key, fingerprint, status) values (?, ?, ?, ?) on conflict do nothing")
                .params(caller, given, fingerprint, HttpStatus.OK.value()).update();
        stored(given, caller, fingerprint);
    }

    private ResponseEntity<?> run(Supplier<? extends ResponseEntity<?>> work) {
        ResponseEntity<?> answer = transaction.execute(status -> work.get());
        if (answer == null) {
            throw new IllegalStateException("a command gave no answer");
        }
        return answer;
    }

    private record Stored(byte[] fingerprint, int status, @Nullable String location, @Nullable String etag,
            @Nullable String body) {}

    private Optional<ResponseEntity<?>> stored(String key, UUID caller, byte[] fingerprint) {
        return jdbc
                .sql("select fingerprint, status, location, etag, body from idempotency where caller = ? and key = ?")
                .params(caller, key).query(Stored.class).optional().map(found -> {
                    if (!MessageDigest.isEqual(found.fingerprint, fingerprint)) {
                        throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "IDEMPOTENCY_KEY_REUSED",
                                "This Idempotency-Key was used for another request: send a new key.").asException();
                    }
                    return replay(found);
                });
    }

    private static ResponseEntity<?> replay(Stored found) {
        var answer = ResponseEntity.status(found.status).header("Idempotent-Replay", "true");
        if (found.location != null) {
            answer.location(URI.create(found.location));
        }
        if (found.etag != null) {
            answer.eTag(found.etag);
        }
        return found.body == null
                ? answer.build()
                : answer.contentType(MediaType.APPLICATION_JSON).body(found.body);
    }

    private ResponseEntity<?> keep(String key, UUID caller, byte[] fingerprint, ResponseEntity<?> answer) {
        var location = answer.getHeaders().getLocation();
        jdbc.sql("""
                insert into idempotency (caller, key, fingerprint, status, location, etag, body)
                values (?, ?, ?, ?, ?, ?, ?)""")
                .params(caller, key, fingerprint, answer.getStatusCode().value(),
                        location == null ? null : location.toString(), answer.getHeaders().getETag(),
                        answer.hasBody() ? json.writeValueAsString(answer.getBody()) : null)
                .update();
        return answer;
    }

    private byte[] fingerprint(String command, Object request) {
        var digest = Sha256.start();
        digest.update(command.getBytes(StandardCharsets.UTF_8));
        return digest.digest(json.writeValueAsBytes(request));
    }
}
