package org.collarbook.access;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

import org.collarbook.platform.Problem;
import org.collarbook.platform.Sha256;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.oauth2.jwt.BadJwtException;
import org.springframework.security.oauth2.jwt.Jwt;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.jwt.JwtDecoderInitializationException;
import org.springframework.security.oauth2.jwt.JwtException;
import org.springframework.stereotype.Component;

import com.nimbusds.jose.jwk.source.RateLimitReachedException;

/** Callers who come with a token of the issuer that the service was started with. With no issuer there are none. */
@Component
class Tokens {

    private static final Logger log = LoggerFactory.getLogger(Tokens.class);
    private static final int MOST_NOTED = 100_000;

    private final @Nullable JwtDecoder decoder;
    private final JdbcClient jdbc;
    private final Clock clock;
    /** Of those in the table already the latest; to write the others once more changes nothing. */
    private final Set<UUID> noted = ConcurrentHashMap.newKeySet();

    Tokens(AccessSettings settings, JdbcClient jdbc, Clock clock) {
        var issuer = settings.issuer();
        this.decoder = issuer == null || issuer.isBlank() ? null : IssuerKeys.decoder(issuer, settings, clock);
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Nobody where the token proves nothing; a refusal where the issuer could not be asked. */
    Optional<Caller> callerOf(String token) {
        if (decoder == null) {
            return Optional.empty();
        }
        try {
            return caller(decoder.decode(token));
        } catch (BadJwtException untrue) {
            return Optional.empty();
        } catch (JwtException | JwtDecoderInitializationException silent) {
            if (silent.getCause() instanceof RateLimitReachedException) {
                // a key id that the issuer did not have a moment ago
                return Optional.empty();
            }
            log.warn("The issuer of tokens does not answer as it should", silent);
            throw Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "ISSUER_SILENT",
                    "The issuer of this token could not be asked for its keys: come again later, or use a key.")
                    .asException();
        }
    }

    private Optional<Caller> caller(Jwt token) {
        var subject = token.getSubject();
        if (subject == null || subject.isBlank()) {
            return Optional.empty();
        }
        var issuer = token.getClaimAsString("iss");
        var id = idOf(issuer, subject);
        if (!noted.contains(id)) {
            jdbc.sql("insert into token_caller (id, issuer, subject, first_seen_at) values (?, ?, ?, ?)"
                    + " on conflict do nothing")
                    .params(id, issuer, subject, clock.instant().atOffset(ZoneOffset.UTC)).update();
            if (noted.size() >= MOST_NOTED) {
                noted.clear();
            }
            noted.add(id);
        }
        var grant = TokenGrant.of(token);
        return Optional.of(new Caller(id, subject, grant.roles(), grant.scope()));
    }

    /** The same for the same person everywhere (RFC 9562, version 8: an id made in a way of our own). */
    static UUID idOf(String issuer, String subject) {
        var named = (issuer.length() + " " + issuer + subject).getBytes(StandardCharsets.UTF_8);
        var hash = ByteBuffer.wrap(Sha256.of(named));
        return new UUID(hash.getLong() & ~0xf000L | 0x8000L, hash.getLong() >>> 2 | 0x8000000000000000L);
    }
}
