package org.collarbook.access;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

import org.collarbook.platform.Problem;
import org.collarbook.platform.Sha256;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

import io.github.bucket4j.TimeMeter;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/**
 * How often a client address may come with what opens nothing: each key is looked up, the signature of each token is
 * checked. What has opened something here is tried all the same, so that a stranger behind the same proxy locks nobody out
 * who belongs there.
 */
@Component
public class Guesses {

    private static final int MOST = 100_000;
    /** Of an IPv6 address one client has the whole second half (RFC 4291, section 2.5.4, from memory). */
    private static final int NETWORK_BYTES = 8;

    private final long perMinute;
    private final Buckets<String> failures = new Buckets<>(MOST, TimeMeter.SYSTEM_MILLISECONDS);
    /** The hashes of what opened something when it came last. */
    private final Set<String> opening = ConcurrentHashMap.newKeySet();

    Guesses(AccessSettings settings) {
        this.perMinute = settings.invalidKeysPerMinute();
    }

    /** What the secret opens; a refusal where too much from the same address has opened nothing. */
    public <T> Optional<T> open(String secret, HttpServletRequest request, HttpServletResponse response,
            Function<String, Optional<T>> look) {
        if (perMinute == 0) {
            return look.apply(secret);
        }
        var hash = HexFormat.of().formatHex(Sha256.of(secret.getBytes(StandardCharsets.UTF_8)));
        var left = failures.of(client(request.getRemoteAddr()), perMinute);
        var one = left.estimateAbilityToConsume(1);
        if (!one.canBeConsumed() && !opening.contains(hash)) {
            response.setHeader(HttpHeaders.RETRY_AFTER,
                    String.valueOf(Rates.seconds(one.getNanosToWaitForRefill())));
            throw refusal().asException();
        }
        var found = look.apply(secret);
        if (found.isPresent()) {
            note(hash);
        } else {
            left.tryConsume(1);
            opening.remove(hash);
        }
        return found;
    }

    private Problem refusal() {
        return Problem.of(HttpStatus.TOO_MANY_REQUESTS, "TOO_MANY_REQUESTS", "More than " + perMinute
                + " requests a minute came from this address with a key or token that opens nothing: come again after"
                + " Retry-After seconds.");
    }

    private void note(String hash) {
        if (opening.size() >= MOST) {
            opening.clear();
        }
        opening.add(hash);
    }

    static String client(String address) {
        try {
            var read = InetAddress.ofLiteral(address);
            return read instanceof Inet6Address six
                    ? HexFormat.of().formatHex(six.getAddress(), 0, NETWORK_BYTES)
                    : read.getHostAddress();
        } catch (IllegalArgumentException aProxysWord) {
            return address;
        }
    }
}
