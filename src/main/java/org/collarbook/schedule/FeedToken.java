package org.collarbook.schedule;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.regex.Pattern;

import org.collarbook.platform.Sha256;

/** What opens a feed: 256 random bits in base64url. Exists only while it is shown or checked. */
record FeedToken(String text) {

    private static final Pattern SHAPE = Pattern.compile("[A-Za-z0-9_-]{43}");
    private static final SecureRandom RANDOM = new SecureRandom();

    static FeedToken generate() {
        var bits = new byte[32];
        RANDOM.nextBytes(bits);
        return new FeedToken(Base64.getUrlEncoder().withoutPadding().encodeToString(bits));
    }

    static Optional<FeedToken> parse(String text) {
        return Optional.of(text).filter(given -> SHAPE.matcher(given).matches()).map(FeedToken::new);
    }

    /** As of random bits nobody can guess, so a plain hash is as good as a slow one. */
    byte[] hash() {
        return Sha256.of(text.getBytes(StandardCharsets.US_ASCII));
    }

    @Override
    public String toString() {
        return "a feed's token";
    }
}
