package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Who may make a subscription, what it takes, and what a stranger sees of it. */
@RegisterTest
class SubscriptionTests {

    private final Api api;
    private final Given given;
    private final DeliverNotices deliver;
    private final JdbcClient jdbc;
    private final Tables tables;
    private final NoticeFixture fixture;

    SubscriptionTests(Api api, Given given, DeliverNotices deliver, JdbcClient jdbc, Tables tables) {
        this.api = api;
        this.given = given;
        this.deliver = deliver;
        this.jdbc = jdbc;
        this.tables = tables;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        fixture.close();
    }

    private static String of(UUID customer) {
        return "/api/customers/" + customer + "/notice-subscriptions";
    }

    @Test
    void theSecretIsShownOnce() {
        var customer = given.customer();
        var administrator = api.as(Role.ADMINISTRATOR);
        var made = administrator.post(of(customer), NoticeFixture.wanted(fixture.receiver().url(),
                NoticeFixture.EVERY_KIND)).expect(201);
        assertThat(made.text("/secret")).matches("whsec_[A-Za-z0-9+/]{43}=");
        assertThat(made.header("Location")).endsWith(made.text("/subscription/id"));
        assertThat(made.at("/subscription/lead/months").asInt()).isEqualTo(2);
        for (var path : List.of(of(customer), "/api/notice-subscriptions/" + made.text("/subscription/id"))) {
            assertThat(administrator.get(path).expect(200).body()).doesNotContain("secret").doesNotContain("whsec_");
        }
        var rotated = administrator.post("/api/notice-subscriptions/" + made.text("/subscription/id")
                + "/secret-rotation", Map.of()).expect(200);
        assertThat(rotated.text("/secret")).matches("whsec_.{44}").isNotEqualTo(made.text("/secret"));
    }

    @Test
    void aTestNoticeTellsOfNoContainer() {
        var told = fixture.told(List.of("HOLD"));
        var sent = told.portal().post(told.path() + "/test", "").expect(202);
        NoticeFixture.until(deliver, () -> told.receiver().received().size() == 1);
        var received = told.receiver().received().getFirst();
        NoticeFixture.assertSigned(received, told.secret());
        assertThat(received.json().propertyNames()).containsExactlyInAnyOrder("version", "id", "type", "occurredAt",
                "reason");
        assertThat(received.type()).isEqualTo("endpoint.test");
        assertThat(received.header("webhook-id")).isEqualTo(sent.text("/noticeId"));
    }

    @Test
    void whatIsWrongIsToldAllAtOnceAndChangesNothing() {
        var customer = given.customer();
        var portal = api.asPortalOf(new CustomerId(customer));
        tables.unchangedBy(() -> {
            var body = new LinkedHashMap<String, Object>();
            body.put("url", "https://10.0.0.1/");
            body.put("kinds", List.of("HOLD", "EVERYTHING"));
            body.put("lead", Map.of("days", 3));
            assertThat(portal.post(of(customer), body).expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(Map.of(
                    "/url", "INVALID_URL", "/kinds/1", "UNKNOWN_WORD", "/lead", "NOT_ALLOWED"));
            assertThat(portal.post(of(customer), Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/url", "MISSING", "/kinds", "MISSING"));
            for (var lead : List.of(Map.of(), Map.of("days", 1, "months", 1), Map.of("days", -1),
                    Map.of("months", 25))) {
                portal.post(of(customer), Map.of("url", "https://example.com/", "kinds", List.of("DUE_SOON"), "lead",
                        lead)).expectProblem(400, "INVALID_INPUT");
            }
        });
        var told = fixture.told(List.of("HOLD"));
        tables.unchangedBy(() -> told.portal().post(told.path() + "/secret-rotation", Map.of("overlapHours", 169))
                .expectProblem(400, "INVALID_INPUT"));
    }

    @Test
    void aCustomerHasTenAtMost() {
        var told = fixture.told(List.of("HOLD"));
        var wanted = NoticeFixture.wanted("https://example.com/", List.of("HOLD"));
        for (int i = 0; i < 9; i++) {
            told.portal().post(of(told.customer()), wanted).expect(201);
        }
        tables.unchangedBy(() -> told.portal().post(of(told.customer()), wanted)
                .expectProblem(409, "TOO_MANY_SUBSCRIPTIONS"));
        told.portal().delete(told.path()).expect(204);
        told.portal().post(of(told.customer()), wanted).expect(201);
    }

    @Test
    void anothersSubscriptionIsNotThere() {
        var told = fixture.told(List.of("HOLD"));
        var stranger = api.asPortalOf(new CustomerId(given.customer()));
        tables.unchangedBy(() -> {
            for (var path : List.of(of(told.customer()), told.path(), told.path() + "/notices",
                    told.path() + "/attempts")) {
                stranger.get(path).expectProblem(404, "NOT_FOUND");
            }
            stranger.delete(told.path()).expectProblem(404, "NOT_FOUND");
            stranger.post(of(told.customer()), NoticeFixture.wanted("https://example.com/", List.of("HOLD")))
                    .expectProblem(404, "NOT_FOUND");
            var bodies = new HashMap<String, Object>(Map.of("/secret-rotation", Map.of(), "/pause", "",
                    "/resumption", "", "/test", "", "/replays", Map.of("since", "2026-11-01T00:00:00Z")));
            bodies.forEach((command, body) -> {
                var refused = stranger.post(told.path() + command, body).expectProblem(404, "NOT_FOUND");
                var nobodys = stranger.post("/api/notice-subscriptions/" + new UUID(1, 1) + command, body);
                assertThat(refused.body()).isEqualTo(nobodys.body());
            });
            api.as(Role.ADMINISTRATOR).post(of(new UUID(1, 1)), NoticeFixture.wanted("https://example.com/",
                    List.of("HOLD"))).expectProblem(404, "NOT_FOUND");
        });
    }

    @Test
    void whatEndsIsGoneAndNothingMoreIsWritten() {
        var told = fixture.told(List.of("HOLD"));
        var id = fixture.cylinderAt(told.site());
        fixture.hold(id);
        told.portal().delete(told.path()).expect(204);
        told.portal().get(told.path()).expectProblem(404, "NOT_FOUND");
        told.portal().delete(told.path()).expectProblem(404, "NOT_FOUND");
        assertThat(told.portal().get(of(told.customer())).expect(200).at("/items")).isEmpty();
        fixture.hold(fixture.cylinderAt(told.site()));
        deliver.begin();
        NoticeFixture.pause(200);
        assertThat(told.receiver().received()).isEmpty();
        assertThat(tables.count("notice where subscription_id = '" + told.subscription() + "'")).isEqualTo(1);
        assertThat(tables.count("notice_secret where subscription_id = '" + told.subscription() + "'")).isZero();
        assertThat(tables.count("notice_seen where customer_id = '" + told.customer() + "'")).isZero();
    }

    @Test
    void aTestIsSentOnceUnderOneKey() {
        var told = fixture.told(List.of("HOLD"));
        var keyed = told.portal().with("Idempotency-Key", UUID.randomUUID().toString());
        var first = keyed.post(told.path() + "/test", "").expect(202);
        assertThat(keyed.post(told.path() + "/test", "").expect(202).text("/noticeId"))
                .isEqualTo(first.text("/noticeId"));
        assertThat(tables.count("notice where subscription_id = '" + told.subscription() + "'")).isEqualTo(1);
    }
}
