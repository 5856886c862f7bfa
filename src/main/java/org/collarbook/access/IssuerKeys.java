package org.collarbook.access;

import java.io.IOException;
import java.net.MalformedURLException;
import java.net.URI;
import java.net.URL;
import java.text.ParseException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;

import org.springframework.security.oauth2.core.DelegatingOAuth2TokenValidator;
import org.springframework.security.oauth2.core.OAuth2TokenValidator;
import org.springframework.security.oauth2.jose.jws.SignatureAlgorithm;
import org.springframework.security.oauth2.jwt.Jwt;
import org.springframework.security.oauth2.jwt.JwtAudienceValidator;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.jwt.JwtIssuerValidator;
import org.springframework.security.oauth2.jwt.JwtTimestampValidator;
import org.springframework.security.oauth2.jwt.JwtTypeValidator;
import org.springframework.security.oauth2.jwt.NimbusJwtDecoder;
import org.springframework.security.oauth2.jwt.SupplierJwtDecoder;

import com.nimbusds.jose.jwk.source.JWKSourceBuilder;
import com.nimbusds.jose.proc.SecurityContext;
import com.nimbusds.jose.util.DefaultResourceRetriever;
import com.nimbusds.jose.util.JSONObjectUtils;

/**
 * How a token of the issuer is proved. Only signatures with a private key count: with a shared secret, or none, whoever
 * reads the issuer's public keys could sign. The issuer is asked when the first token comes, so that the service starts
 * without it, and not more than twice in half a minute, whatever key ids strangers invent.
 */
final class IssuerKeys {

    private static final List<SignatureAlgorithm> SIGNATURES = List.of(SignatureAlgorithm.RS256,
            SignatureAlgorithm.PS256, SignatureAlgorithm.ES256);
    private static final Duration SKEW = Duration.ofSeconds(60);
    private static final int PATIENCE_MILLIS = 3000;
    private static final int MOST_BYTES = 512 * 1024;

    private IssuerKeys() {}

    static JwtDecoder decoder(String issuer, AccessSettings settings, Clock clock) {
        return new SupplierJwtDecoder(() -> {
            var retriever = new DefaultResourceRetriever(PATIENCE_MILLIS, PATIENCE_MILLIS, MOST_BYTES);
            var keys = settings.jwkSetUri() == null ? told(issuer, retriever) : settings.jwkSetUri();
            var decoder = NimbusJwtDecoder.withJwkSource(JWKSourceBuilder.<SecurityContext>create(url(keys), retriever)
                    .refreshAheadCache(false).build())
                    .jwsAlgorithms(allowed -> {
                        allowed.clear();
                        allowed.addAll(SIGNATURES);
                    })
                    // RFC 9068 calls an access token at+jwt, which the library's own check would refuse
                    .jwtProcessorCustomizer(processor -> processor.setJWSTypeVerifier((type, context) -> {
                    })).build();
            decoder.setJwtValidator(validator(issuer, settings.audience(), clock));
            return decoder;
        });
    }

    private static OAuth2TokenValidator<Jwt> validator(String issuer, String audience, Clock clock) {
        var times = new JwtTimestampValidator(SKEW);
        times.setClock(clock);
        times.setAllowEmptyExpiryClaim(false);
        var type = new JwtTypeValidator("JWT", "at+jwt", "application/at+jwt");
        type.setAllowEmpty(true);
        return new DelegatingOAuth2TokenValidator<>(times, type, new JwtIssuerValidator(issuer),
                new JwtAudienceValidator(audience));
    }

    /** OpenID Connect Discovery 1.0, section 4: the document must name the issuer it was asked of. */
    private static String told(String issuer, DefaultResourceRetriever retriever) {
        try {
            var document = JSONObjectUtils.parse(retriever.retrieveResource(
                    url(issuer.replaceFirst("/$", "") + "/.well-known/openid-configuration")).getContent());
            if (!issuer.equals(document.get("issuer"))) {
                throw new IllegalStateException("The issuer " + issuer + " calls itself " + document.get("issuer"));
            }
            return JSONObjectUtils.getString(document, "jwks_uri");
        } catch (IOException | ParseException silent) {
            throw new IllegalStateException("The issuer " + issuer + " does not tell where its keys are", silent);
        }
    }

    private static URL url(String text) {
        try {
            return URI.create(text).toURL();
        } catch (MalformedURLException e) {
            throw new IllegalArgumentException(e);
        }
    }
}
