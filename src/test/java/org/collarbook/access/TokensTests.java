package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

import org.collarbook.platform.ProblemException;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;

import com.nimbusds.jose.JOSEException;
import com.nimbusds.jose.JOSEObjectType;
import com.nimbusds.jose.JWSAlgorithm;
import com.nimbusds.jose.JWSHeader;
import com.nimbusds.jose.crypto.MACSigner;
import com.nimbusds.jose.crypto.RSASSASigner;
import com.nimbusds.jwt.JWTClaimsSet;
import com.nimbusds.jwt.PlainJWT;

/** Callers with a token of the issuer that the service was started with; the attacks are those of RFC 8725, section 2. */
@RegisterTest
class TokensTests {

    private static final TestIssuer ISSUER = new TestIssuer();

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final JdbcClient jdbc;

    TokensTests(Api api, Given given, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    @DynamicPropertySource
    static void issuer(DynamicPropertyRegistry properties) {
        properties.add("spring.security.oauth2.resourceserver.jwt.issuer-uri", ISSUER::url);
    }

    private static Consumer<JWTClaimsSet.Builder> roles(String... words) {
        return claims -> claims.claim("collarbook_roles", List.of(words));
    }

    private int status(String token) {
        return api.withKey(token).get("/api/containers?size=1").status();
    }

    @Test
    void opensWhatItsRolesOpen() {
        var filler = api.withKey(ISSUER.token(roles("filler", "emperor")));
        filler.get("/api/containers?size=1").expect(200);
        filler.get("/api/keys").expectProblem(403, "FORBIDDEN");
        api.as(Role.FILLER).get("/api/containers?size=1").expect(200);
    }

    @Test
    void hasANameInTheRecords() {
        var made = api.withKey(ISSUER.token(roles("administrator")))
                .post("/api/keys", Map.of("name", "by token", "roles", List.of("filler"))).expect(201).id();
        var by = jdbc.sql("select created_by from api_key where id = ?").param(UUID.fromString(made)).query(UUID.class)
                .single();
        assertThat(by).isEqualTo(Tokens.idOf(ISSUER.url(), "m.holt")).isNotEqualTo(Tokens.idOf("x", "m.holt"));
        assertThat(jdbc.sql("select kind || ' ' || name from known_caller where id = ?").param(by).query(String.class)
                .list()).containsExactly("TOKEN m.holt");
        assertThat(by.version()).isEqualTo(8);
        assertThat(by.variant()).isEqualTo(2);
    }

    /** Whatever a key may make, a token of the same role may: its caller has no row among the keys. */
    @Test
    void makesWhatAKeyOfItsRoleMakes() {
        var customer = given.customer();
        var portal = api.withKey(ISSUER.token(token -> token.claim("collarbook_roles", List.of("portal"))
                .claim("collarbook_customer", customer.toString())));
        portal.post("/api/customers/" + customer + "/notice-subscriptions",
                Map.of("url", "https://example.com/", "kinds", List.of("HOLD"))).expect(201);
        api.withKey(ISSUER.token(roles("clerk"))).post("/api/calendar-feeds", Map.of("name", "by token")).expect(201);
        assertThat(jdbc.sql("""
                select conrelid::regclass || ' ' || conname from pg_constraint
                where confrelid = 'api_key'::regclass and conrelid <> 'api_key'::regclass""").query(String.class)
                .list()).as("tables that take keys alone").isEmpty();
    }

    @Test
    void rolesThatAreNoneOrContradictOpenNothing() {
        var customer = given.customer().toString();
        var site = given.site(UUID.fromString(customer)).toString();
        for (var claims : List.<Map<String, Object>>of(Map.of(), Map.of("collarbook_roles", List.of("emperor")),
                Map.of("collarbook_roles", "administrator"), Map.of("roles", List.of("administrator")),
                Map.of("collarbook_roles", List.of("clerk"), "collarbook_customer", customer),
                Map.of("collarbook_roles", List.of("clerk"), "collarbook_sites", List.of(site)),
                Map.of("collarbook_roles", List.of("portal")),
                Map.of("collarbook_roles", List.of("portal", "clerk"), "collarbook_customer", customer),
                Map.of("collarbook_roles", List.of("portal"), "collarbook_customer", "all"),
                Map.of("collarbook_roles", List.of("portal"), "collarbook_customer", customer, "collarbook_sites",
                        List.of()),
                Map.of("collarbook_roles", List.of("portal"), "collarbook_customer", customer, "collarbook_sites",
                        List.of(site, "all")))) {
            var caller = api.withKey(ISSUER.token(token -> claims.forEach(token::claim)));
            caller.get("/api/containers?size=1").expectProblem(403, "FORBIDDEN");
            caller.get("/api/portal/containers?customer=" + customer).expectProblem(403, "FORBIDDEN");
        }
    }

    @Test
    void aPortalIsConfinedToItsCustomer() {
        var customer = given.customer();
        var portal = api.withKey(ISSUER.token(token -> token.claim("collarbook_roles", List.of("portal"))
                .claim("collarbook_customer", customer.toString())));
        portal.get("/api/portal/containers").expect(200);
        portal.get("/api/portal/containers?customer=" + given.customer()).expectProblem(404, "NOT_FOUND");
        portal.get("/api/containers").expectProblem(403, "FORBIDDEN");
    }

    @Test
    void whatIsNotProvedIsNobody() throws JOSEException {
        var good = ISSUER.claims(roles("clerk"));
        var header = new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("one").build();
        var forged = TestIssuer.signed(header, new RSASSASigner(TestIssuer.rsa("one")), good);
        var stranger = TestIssuer.signed(new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("two").build(),
                new RSASSASigner(TestIssuer.rsa("two")), good);
        var secret = ISSUER.key().toRSAPublicKey().getEncoded();
        var shared = TestIssuer.signed(new JWSHeader.Builder(JWSAlgorithm.HS256).keyID("one").build(),
                new MACSigner(secret), good);
        var another = TestIssuer.signed(new JWSHeader.Builder(JWSAlgorithm.RS512).keyID("one").build(),
                new RSASSASigner(ISSUER.key()), good);
        var idToken = TestIssuer.signed(new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("one")
                .type(new JOSEObjectType("logout+jwt")).build(), new RSASSASigner(ISSUER.key()), good);
        var whole = ISSUER.token(roles("clerk"));
        for (var token : List.of(forged, stranger, shared, another, idToken, new PlainJWT(good).serialize(),
                whole.substring(0, whole.lastIndexOf('.') + 1), whole.substring(0, whole.length() - 4), "eyJ", "a.b.c",
                ISSUER.token(roles("clerk").andThen(claims -> claims.issuer("http://localhost/elsewhere"))),
                ISSUER.token(roles("clerk").andThen(claims -> claims.audience("another"))),
                ISSUER.token(roles("clerk").andThen(claims -> claims.audience((String) null))),
                ISSUER.token(roles("clerk").andThen(claims -> claims.expirationTime(null))),
                ISSUER.token(roles("clerk").andThen(claims -> claims.subject(null))))) {
            var answer = api.withKey(token).get("/api/containers?size=1").expectProblem(401, "KEY_REQUIRED");
            assertThat(answer.header("WWW-Authenticate")).isEqualTo("Bearer error=\"invalid_token\"");
        }
    }

    @Test
    void anAccessTokenOfRfc9068IsOne() throws JOSEException {
        assertThat(status(TestIssuer.signed(new JWSHeader.Builder(JWSAlgorithm.RS256).keyID("one")
                .type(new JOSEObjectType("at+jwt")).build(), new RSASSASigner(ISSUER.key()),
                ISSUER.claims(roles("clerk"))))).isEqualTo(200);
    }

    @Test
    void countsFromItsStartToItsEndWithAMinuteForClocksThatDiffer() {
        var token = ISSUER.token(roles("clerk").andThen(claims -> claims
                .notBeforeTime(Date.from(Instant.parse("2026-11-25T14:00:00Z")))
                .expirationTime(Date.from(Instant.parse("2026-11-25T15:00:00Z")))));
        for (var at : Map.of("2026-11-25T13:58:59Z", 401, "2026-11-25T13:59:00Z", 200, "2026-11-25T15:00:59Z", 200,
                "2026-11-25T15:01:01Z", 401).entrySet()) {
            clock.set(Instant.parse(at.getKey()));
            assertThat(status(token)).as(at.getKey()).isEqualTo(at.getValue());
        }
    }

    @Test
    void inventedKeyIdsDoNotMakeTheServiceAskTheIssuerEachTime() throws JOSEException {
        int before = ISSUER.asked();
        for (int i = 0; i < 20; i++) {
            var stranger = TestIssuer.rsa("invented" + i);
            assertThat(status(TestIssuer.signed(
                    new JWSHeader.Builder(JWSAlgorithm.RS256).keyID(stranger.getKeyID()).build(),
                    new RSASSASigner(stranger), ISSUER.claims(roles("clerk"))))).isEqualTo(401);
        }
        assertThat(ISSUER.asked() - before).isLessThanOrEqualTo(4);
    }

    @Test
    void aSilentIssuerIsToldApartFromABadToken() {
        var tokens = new Tokens(new AccessSettings("http://localhost:1", "collarbook", null, Map.of(), 0, 0, 1,
                List.of()),
                jdbc, clock);
        assertThatThrownBy(() -> tokens.callerOf(ISSUER.token(roles("clerk")))).isInstanceOf(ProblemException.class)
                .hasMessageContaining("issuer");
    }
}
