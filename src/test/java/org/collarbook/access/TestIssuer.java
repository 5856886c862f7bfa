package org.collarbook.access;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Date;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.JWSSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.gen.RSAKeyGenerator;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.SignedJWT;
import com.sun.net.httpserver.HttpServer;

/** An issuer of tokens with its discovery document and its keys, as OpenID Connect Discovery 1.0 lays them out. */
final class TestIssuer {

    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    private final HttpServer server;
    private final RSAKey key = rsa("one");
    private final AtomicInteger asked = new AtomicInteger();

    TestIssuer() {
        try {
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        serve("/.well-known/openid-configuration",
                "{\"issuer\":\"" + url() + "\",\"jwks_uri\":\"" + url() + "/keys\"}");
        serve("/keys", new JWKSet(key.toPublicJWK()).toString());
        server.start();
    }

    private void serve(String path, String body) {
        server.createContext(path, exchange -> {
            asked.incrementAndGet();
            var bytes = body.getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("Content-Type", "application/json");
            exchange.sendResponseHeaders(200, bytes.length);
            exchange.getResponseBody().write(bytes);
            exchange.close();
        });
    }

    static RSAKey rsa(String id) {
        try {
            return new RSAKeyGenerator(2048).keyID(id).generate();
        } catch (JOSEException e) {
            throw new IllegalStateException(e);
        }
    }

    String url() {
        return "http://localhost:" + server.getAddress().getPort();
    }

    RSAKey key() {
        return key;
    }

    int asked() {
        return asked.get();
    }

    /** Claims that are good for an hour, but for what the test changes. */
    JWTClaimsSet claims(Consumer<JWTClaimsSet.Builder> change) {
        var claims = new JWTClaimsSet.Builder().issuer(url()).audience("collarbook").subject("m.holt")
                .notBeforeTime(Date.from(NOON.minusSeconds(60))).expirationTime(Date.from(NOON.plusSeconds(3600)));
        change.accept(claims);
        return claims.build();
    }

    String token(Consumer<JWTClaimsSet.Builder> change) {
        try {
            return signed(new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("one").build(), new RSASSASigner(key),
                    claims(change));
        } catch (JOSEException e) {
            throw new IllegalStateException(e);
        }
    }

    static String signed(JWSHeader header, JWSSigner signer, JWTClaimsSet claims) {
        try {
            var token = new SignedJWT(header, claims);
            token.sign(signer);
            return token.serialize();
        } catch (JOSEException e) {
            throw new IllegalStateException(e);
        }
    }
}
