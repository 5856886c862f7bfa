package org.collarbook.portal;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.UUID;
import java.util.stream.Collectors;

import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Seals what a portal had been told into a token that nobody else can make, or use for another customer or other sites. */
@Component
class SinceTokens {

    /** Less than departures are kept, by the time that a reading of many pages may take. */
    static final Duration GOOD_FOR = Duration.ofDays(30);
    private static final int SEAL = 16;
    private static final String MAC = "HmacSHA256";

    private final SecretKeySpec key;
    private final Clock clock;

    SinceTokens(JdbcClient jdbc, Clock clock) {
        this.key = new SecretKeySpec(jdbc.sql("select secret from portal_token_key").query(byte[].class).single(), MAC);
        this.clock = clock;
    }

    String seal(Since told, CustomerScope scope, CustomerId customer) {
        var content = (told.takenAt() + " " + told.ruleBook() + " " + told.snapshot())
                .getBytes(StandardCharsets.US_ASCII);
        var sealed = Arrays.copyOf(sealOf(content, scope, customer), SEAL + content.length);
        System.arraycopy(content, 0, sealed, SEAL, content.length);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(sealed);
    }

    /** Refuses by problem one that is not ours, not for this customer and these sites, or too old. */
    Since open(String token, CustomerScope scope, CustomerId customer) {
        var told = read(token, scope, customer);
        if (told == null || told.takenAt().isBefore(clock.instant().minus(GOOD_FOR))) {
            throw startOver().asException();
        }
        return told;
    }

    static Problem startOver() {
        return Problem.of(HttpStatus.GONE, "START_OVER",
                "What changed since this token cannot be told: it is older than "
                        + GOOD_FOR.toDays()
                        + " days, altered, or was given for other sites. Start over: read the list from its"
                        + " first page without since; its answer gives a new token.");
    }

    private @Nullable Since read(String token, CustomerScope scope, CustomerId customer) {
        try {
            var sealed = Base64.getUrlDecoder().decode(token);
            if (sealed.length <= SEAL) {
                return null;
            }
            var content = Arrays.copyOfRange(sealed, SEAL, sealed.length);
            if (!MessageDigest.isEqual(Arrays.copyOf(sealed, SEAL), sealOf(content, scope, customer))) {
                return null;
            }
            var part = new String(content, StandardCharsets.US_ASCII).split(" ", 3);
            return new Since(part[2], Instant.parse(part[0]), Integer.parseInt(part[1]));
        } catch (IllegalArgumentException | DateTimeException notOurs) {
            return null;
        }
    }

    private byte[] sealOf(byte[] content, CustomerScope scope, CustomerId customer) {
        try {
            var mac = Mac.getInstance(MAC);
            mac.init(key);
            mac.update((customer + " " + sites(scope) + " ").getBytes(StandardCharsets.US_ASCII));
            return Arrays.copyOf(mac.doFinal(content), SEAL);
        } catch (GeneralSecurityException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static String sites(CustomerScope scope) {
        return switch (scope) {
            case CustomerScope.Everyone() -> "all";
            case CustomerScope.Only(var _, var sites) -> sites == null
                    ? "all"
                    : sites.stream().map(UUID::toString).sorted().collect(Collectors.joining(","));
        };
    }
}
