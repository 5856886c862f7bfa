package org.collarbook.access;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.regex.Pattern;

import org.collarbook.platform.Sha256;
import org.jspecify.annotations.Nullable;

/** A key in the clear: {@code cb_} and 256 random bits in base64url. Exists only while it is shown or checked. */
record ApiKey(String text) {

    private static final Pattern SHAPE = Pattern.compile("cb_[A-Za-z0-9_-]{43}");
    private static final SecureRandom RANDOM = new SecureRandom();

    static ApiKey generate() {
        var bits = new byte[32];
        RANDOM.nextBytes(bits);
        return new ApiKey("cb_" + Base64.getUrlEncoder().withoutPadding().encodeToString(bits));
    }

    static Optional<ApiKey> parse(@Nullable String text) {
        return Optional.ofNullable(text).filter(given -> SHAPE.matcher(given).matches()).map(ApiKey::new);
    }

    byte[] hash() {
        return Sha256.of(text.getBytes(StandardCharsets.US_ASCII));
    }

    /** Enough to recognise a key by, far too little to guess it. */
    String prefix() {
        return text.substring(0, 9);
    }

    @Override
    public String toString() {
        return prefix() + "…";
    }
}
