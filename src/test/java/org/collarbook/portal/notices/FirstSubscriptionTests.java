package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

import org.collarbook.access.CustomerId;
import org.collarbook.compliance.ContainersAssessed;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A first subscription beside changes that are under way, and what a register without any pays. */
@RegisterTest
class FirstSubscriptionTests {

    private final Given given;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final ApplicationEventPublisher events;
    private final NoticeFixture fixture;

    FirstSubscriptionTests(Api api, Given given, JdbcClient jdbc, TransactionTemplate transaction,
            ApplicationEventPublisher events) {
        this.given = given;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.events = events;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        fixture.close();
    }

    /** It was changed before anybody was told, and becomes visible after: noted as it then is, or told; never missed. */
    @Test
    void notesHowThingsStandOnlyWhenNothingIsUnderWay() throws Exception {
        var customer = given.customer();
        var site = given.site(customer);
        var id = fixture.cylinderAt(site);
        var wanted = NoticeFixture.wanted(fixture.receiver().url(), List.of("HOLD"));
        var made = new CompletableFuture<NoticeFixture.Told>();
        transaction.executeWithoutResult(status -> {
            jdbc.sql("update requirement set standing = 'ON_HOLD' where container_id = ?").param(id).update();
            events.publishEvent(new ContainersAssessed(List.of(id)));
            Thread.startVirtualThread(() -> made.complete(fixture.told(customer, site, wanted)));
            untilItWaits(made);
        });
        made.get(60, TimeUnit.SECONDS);
        assertThat(jdbc.sql("select word from notice_seen where container_id = ?").param(id).query(String.class)
                .single()).isEqualTo("HELD");
    }

    /** For seconds only, so the change must end as soon as it is seen. */
    private void untilItWaits(CompletableFuture<NoticeFixture.Told> made) {
        long end = System.nanoTime() + Duration.ofMinutes(1).toNanos();
        while (jdbc.sql("select count(*) from pg_locks where locktype = 'advisory' and not granted")
                .query(Integer.class).single() == 0) {
            assertThat(made).as("it waits").isNotDone();
            assertThat(System.nanoTime()).as("it never came to wait").isLessThan(end);
            NoticeFixture.pause(5);
        }
        assertThat(made).as("it waits").isNotDone();
    }

    /** Whoever changes containers is not kept waiting behind it for long. */
    @Test
    void comesAgainWhenALongChangeIsUnderWay() throws Exception {
        var customer = given.customer();
        var refused = new CompletableFuture<Answer>();
        transaction.executeWithoutResult(status -> {
            events.publishEvent(new ContainersAssessed(List.of(given.registered())));
            Thread.startVirtualThread(() -> refused.complete(fixture.api.asPortalOf(new CustomerId(customer)).post(
                    "/api/customers/" + customer + "/notice-subscriptions",
                    NoticeFixture.wanted("https://example.com/", List.of("HOLD")))));
            assertThat(refused).succeedsWithin(Duration.ofSeconds(60));
        });
        refused.get().expectProblem(503, "BUSY");
        assertThat(jdbc.sql("select count(*) from notice_subscription where customer_id = ?").param(customer)
                .query(Long.class).single()).isZero();
    }

    /** One short statement in the transaction of a change, and none for each container. */
    @Test
    void whereNobodyIsToldABatchPaysOneStatement() {
        var ids = List.of(given.registered(), given.registered(), given.registered());
        transaction.executeWithoutResult(status -> {
            try (var sent = SentStatements.byThisThread()) {
                events.publishEvent(new ContainersAssessed(ids));
                assertThat(sent.count()).isEqualTo(1);
            }
        });
    }

    /** Nor does a change of containers that are not of a customer who is told write anything. */
    @Test
    void whereAnotherIsToldABatchPaysTwo() {
        fixture.told(List.of("HOLD"));
        var ids = List.of(given.registered(), given.registered(), given.registered());
        transaction.executeWithoutResult(status -> {
            try (var sent = SentStatements.byThisThread()) {
                events.publishEvent(new ContainersAssessed(ids));
                assertThat(sent.count()).isEqualTo(2);
            }
        });
    }
}
