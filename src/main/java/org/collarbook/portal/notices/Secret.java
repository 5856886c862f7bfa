package org.collarbook.portal.notices;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Collection;
import java.util.UUID;
import java.util.stream.Collectors;

import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * What an endpoint's notices are signed with, and how: Standard Webhooks 1.0.0
 * (https://github.com/standard-webhooks/standard-webhooks), symmetric signatures, "v1".
 */
final class Secret {

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final String ALGORITHM = "HmacSHA256";
    private static final int BYTES = 32;

    private final byte[] bytes;

    Secret(byte[] bytes) {
        this.bytes = bytes.clone();
    }

    static Secret generate() {
        var random = new byte[BYTES];
        RANDOM.nextBytes(random);
        return new Secret(random);
    }

    byte[] bytes() {
        return bytes.clone();
    }

    /** As it is shown, once. */
    String text() {
        return "whsec_" + Base64.getEncoder().encodeToString(bytes);
    }

    String sign(String id, long timestamp, byte[] body) {
        try {
            var mac = Mac.getInstance(ALGORITHM);
            mac.init(new SecretKeySpec(bytes, ALGORITHM));
            mac.update((id + "." + timestamp + ".").getBytes(StandardCharsets.UTF_8));
            return "v1," + Base64.getEncoder().encodeToString(mac.doFinal(body));
        } catch (GeneralSecurityException everyJdkHasIt) {
            throw new IllegalStateException(everyJdkHasIt);
        }
    }

    /** The signatures by all that are valid, for whoever verifies has the one or the other. */
    static String signatures(Collection<Secret> secrets, UUID id, long timestamp, byte[] body) {
        return secrets.stream().map(secret -> secret.sign(id.toString(), timestamp, body))
                .collect(Collectors.joining(" "));
    }

    /** Never what it is. */
    @Override
    public String toString() {
        return "whsec_…";
    }
}
