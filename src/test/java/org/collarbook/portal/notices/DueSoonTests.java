package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.inspection.Sheets;
import org.collarbook.portal.notices.NoticeFixture.Told;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.JsonNode;

/**
 * Which due months are told, on which day. A 4BA240 cylinder in exclusive, corrosion-free service with a coating falls due
 * twelve years after its month of manufacture (49 CFR 180.209(e)).
 */
@RegisterTest
class DueSoonTests {

    private final Api api;
    private final Given given;
    private final TellDueSoon dueSoon;
    private final NearMonths months;
    private final WriteNotices notices;
    private final DescribedContainers containers;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final TestClock clock;
    private final NoticeFixture fixture;

    DueSoonTests(Api api, Given given, TellDueSoon dueSoon, NearMonths months, WriteNotices notices,
            DescribedContainers containers,
            JdbcClient jdbc, TransactionTemplate transaction, TestClock clock) {
        this.api = api;
        this.given = given;
        this.dueSoon = dueSoon;
        this.months = months;
        this.notices = notices;
        this.containers = containers;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        fixture.close();
    }

    private Told told(Map<String, Object> lead) {
        var customer = given.customer();
        var wanted = NoticeFixture.wanted(fixture.receiver().url(), List.of("DUE_SOON"));
        wanted.put("lead", lead);
        return fixture.told(customer, given.site(customer), wanted);
    }

    private UUID made(Told told, String month) {
        var body = Given.cylinder();
        body.put("manufactured", month);
        return fixture.cylinderAt(told.site(), body);
    }

    private List<JsonNode> written(Told told) {
        dueSoon.scan();
        return told.portal().get(told.path() + "/notices?size=1000").expect(200).at("/items").valueStream()
                .map(item -> item.at("/body")).toList().reversed();
    }

    private List<String> due(Told told) {
        return written(told).stream().map(body -> body.at("/due").asString()).toList();
    }

    @Test
    void aMonthIsToldOnceFromTheFirstOfTheMonthThatIsSoManyBefore() {
        var told = told(Map.of("months", 2));
        var january = made(told, "2015-01");
        made(told, "2015-02");
        assertThat(due(told)).containsExactly("2027-01");
        var body = written(told).getFirst();
        assertThat(body.at("/type").asString()).isEqualTo("container.due_soon");
        assertThat(body.at("/container/id").asString()).isEqualTo(january.toString());
        assertThat(body.at("/requirement").asString()).isEqualTo("SHELL");
        assertThat(body.at("/lastDay").asString()).isEqualTo("2027-01-31");
        assertThat(body.at("/status").asString()).isEqualTo("IN_DATE");
        assertThat(body.at("/reason").asString()).isEqualTo("Its requirement shell is due by the end of January 2027.");
        clock.set(LocalDate.of(2026, 11, 30));
        assertThat(due(told)).containsExactly("2027-01");
        // the site is in Chicago: six hours behind UTC in winter
        clock.set(Instant.parse("2026-12-01T05:30:00Z"));
        assertThat(due(told)).containsExactly("2027-01");
        clock.set(Instant.parse("2026-12-01T06:00:00Z"));
        assertThat(due(told)).containsExactly("2027-01", "2027-02");
        clock.set(LocalDate.of(2026, 12, 20));
        assertThat(due(told)).hasSize(2);
    }

    @Test
    void aLeadInDaysCountsBackFromTheLastDay() {
        var told = told(Map.of("days", 10));
        made(told, "2014-12");
        assertThat(due(told)).isEmpty();
        clock.set(LocalDate.of(2026, 12, 20));
        assertThat(due(told)).isEmpty();
        clock.set(LocalDate.of(2026, 12, 21));
        assertThat(due(told)).containsExactly("2026-12");
    }

    @Test
    void whatCameNearAndPassedWhileTheServiceStoodStillIsToldAllTheSame() {
        var told = told(Map.of("days", 0));
        made(told, "2014-11");
        made(told, "2014-12");
        assertThat(due(told)).isEmpty();
        clock.set(LocalDate.of(2027, 1, 20));
        assertThat(due(told)).containsExactlyInAnyOrder("2026-11", "2026-12");
        assertThat(written(told)).hasSize(2).allSatisfy(
                body -> assertThat(body.at("/status").asString()).isEqualTo("OVERDUE"));
    }

    /** An external visual inspection in 2026 sets the month anew, and its correction sets it back. */
    @Test
    void aMonthThatMovedAwayAndBackIsToldAgain() {
        var told = told(Map.of("months", 2));
        var id = made(told, "2014-12");
        assertThat(due(told)).containsExactly("2026-12");
        var record = api.as(Role.YARD).post("/api/containers/" + id + "/requalifications",
                Sheets.visual(Sheets.approved(api))).expect(201);
        clock.set(Instant.parse("2026-11-25T13:00:00Z"));
        assertThat(due(told)).hasSize(1);
        api.as(Role.YARD).post("/api/requalifications/" + record.id() + "/corrections",
                Sheets.correction("another cylinder", null)).expect(201);
        clock.set(Instant.parse("2026-11-25T14:00:00Z"));
        assertThat(due(told)).containsExactly("2026-12", "2026-12");
        clock.set(Instant.parse("2026-11-25T15:00:00Z"));
        assertThat(due(told)).hasSize(2);
    }

    @Test
    void whatIsCondemnedFallsDueNoMoreAndWhatIsAnotherCustomersIsNotTold() {
        var told = told(Map.of("months", 2));
        var condemned = made(told, "2014-12");
        api.as(Role.YARD).post("/api/containers/" + condemned + "/requalifications",
                Sheets.condemned(Sheets.approved(api))).expect(201);
        var gone = made(told, "2014-12");
        given.moved(gone, given.site(null), "2026-11-21T09:00:00Z");
        var other = told(Map.of("months", 2));
        made(other, "2014-12");
        assertThat(due(told)).isEmpty();
        assertThat(due(other)).hasSize(1);
    }

    /** Each subscription has a lead of its own, and is told each month once by it. */
    @Test
    void twoSubscriptionsOfOneCustomerAreToldEachByItsLead() {
        var near = told(Map.of("days", 40));
        var wanted = NoticeFixture.wanted(near.receiver().url(), List.of("DUE_SOON"));
        wanted.put("lead", Map.of("months", 24));
        var far = fixture.told(near.customer(), near.site(), wanted);
        made(near, "2014-12");
        made(near, "2015-12");
        assertThat(due(near)).containsExactly("2026-12");
        assertThat(due(far)).containsExactlyInAnyOrder("2026-12", "2027-12");
    }

    @Test
    void severalServicesTellEachMonthOnceAndAKilledScanGoesOn() throws InterruptedException {
        var told = told(Map.of("months", 2));
        for (int i = 0; i < 30; i++) {
            made(told, "2014-12");
        }
        // a service dies within its chunk: what it had written is not there
        transaction.executeWithoutResult(status -> {
            jdbc.sql("select 1 from notice_scan where subscription_id = ? for no key update")
                    .param(told.subscription()).query(Integer.class).single();
            new TellDueSoon(jdbc, transaction, months, notices, containers, clock).scan();
            status.setRollbackOnly();
        });
        assertThat(told.portal().get(told.path() + "/notices").at("/items")).isEmpty();
        var services = Stream.generate(() -> new TellDueSoon(jdbc, transaction, months, notices, containers, clock))
                .limit(3)
                .map(service -> Thread.startVirtualThread(service::scan)).toList();
        for (var service : services) {
            service.join();
        }
        assertThat(due(told)).hasSize(30);
        assertThat(jdbc.sql("select scanned_through from notice_scan where subscription_id = ?")
                .param(told.subscription()).query(Instant.class).single()).isEqualTo(clock.instant());
    }

    /** Where a change of a container is under way, its notice comes first, and the rest of the customer's are told. */
    @Test
    void whatIsBeingChangedIsLeftToTheNextRound() {
        leftWhile(changing -> jdbc.sql("update notice_seen set word = word where container_id = ?").param(changing)
                .update());
    }

    /** It takes the container first, so that each would wait for the other. */
    @Test
    void soIsWhatIsBeingMerged() {
        leftWhile(merging -> jdbc.sql("select id from container where id = ? for update").param(merging)
                .query(UUID.class).single());
    }

    private void leftWhile(Consumer<UUID> held) {
        var told = told(Map.of("months", 2));
        var still = made(told, "2014-12");
        var changing = made(told, "2014-12");
        transaction.executeWithoutResult(status -> {
            held.accept(changing);
            CompletableFuture.runAsync(dueSoon::scan).join();
            assertThat(toldOf(told)).containsExactly(still.toString());
        });
        dueSoon.scan();
        assertThat(toldOf(told)).containsExactly(still.toString(), changing.toString());
    }

    private static List<String> toldOf(Told told) {
        return told.portal().get(told.path() + "/notices").expect(200).at("/items").valueStream()
                .map(item -> item.at("/body/container/id").asString()).toList().reversed();
    }
}
