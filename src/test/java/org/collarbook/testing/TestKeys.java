package org.collarbook.testing;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** One key for each role, made when it is first asked for. */
final class TestKeys {

    private static final SecureRandom RANDOM = new SecureRandom();

    private final Map<String, String> keys = new ConcurrentHashMap<>();
    private final JdbcClient jdbc;

    TestKeys(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    String of(Role role, @Nullable CustomerId customer) {
        return keys.computeIfAbsent(role + " " + customer, name -> issue(name, role, customer));
    }

    private String issue(String name, Role role, @Nullable CustomerId customer) {
        var bits = new byte[32];
        RANDOM.nextBytes(bits);
        var key = "cb_" + Base64.getUrlEncoder().withoutPadding().encodeToString(bits);
        jdbc.sql("insert into api_key (id, name, prefix, hash, roles, customer_id)"
                + " values (?, ?, ?, decode(?, 'hex'), ?, ?)")
                .params(UUID.randomUUID(), "test " + name, key.substring(0, 9), sha256(key),
                        new String[]{role.word()}, customer == null ? null : customer.value())
                .update();
        return key;
    }

    private static String sha256(String key) {
        try {
            return HexFormat.of().formatHex(
                    MessageDigest.getInstance("SHA-256").digest(key.getBytes(StandardCharsets.US_ASCII)));
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
