package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;

import org.apache.hc.client5.http.SystemDefaultDnsResolver;
import org.collarbook.portal.notices.Attempt.Outcome;
import org.collarbook.portal.notices.NoticeFixture.Told;
import org.collarbook.portal.notices.NoticeQueue.Turn;
import org.collarbook.portal.notices.Receiver.Received;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Endpoints that fail, hang and come back; services that share the work, and die. */
@RegisterTest
class DeliveryTests {

    private final DeliverNotices deliver;
    private final NoticeQueue queue;
    private final SendNotice send;
    private final AllowedAddresses addresses;
    private final JdbcClient jdbc;
    private final TestClock clock;
    private final NoticeFixture fixture;

    DeliveryTests(Api api, Given given, DeliverNotices deliver, NoticeQueue queue, SendNotice send,
            AllowedAddresses addresses, JdbcClient jdbc, TestClock clock) {
        this.deliver = deliver;
        this.queue = queue;
        this.send = send;
        this.addresses = addresses;
        this.jdbc = jdbc;
        this.clock = clock;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        fixture.close();
    }

    private Told toldOf(int containers) {
        var told = fixture.told(List.of("HOLD"));
        for (int i = 0; i < containers; i++) {
            fixture.hold(fixture.cylinderAt(told.site()));
        }
        return told;
    }

    private long waiting(Told told) {
        return told.portal().get(told.path()).expect(200).at("/waiting").asLong();
    }

    private List<String> outcomes(Told told) {
        return told.portal().get(told.path() + "/attempts").expect(200).at("/items").findValuesAsString("outcome")
                .reversed();
    }

    private void later(Duration by) {
        clock.set(clock.instant().plus(by));
    }

    private void deliverUntil(Told told, int received) {
        NoticeFixture.until(deliver, () -> told.receiver().received().size() >= received && !inTurn(told));
    }

    private boolean inTurn(Told told) {
        return jdbc.sql("select lease_until > now() from notice_turn where subscription_id = ?")
                .param(told.subscription()).query(Boolean.class).single();
    }

    /** Nothing more is sent now, however often it is looked for. */
    private void quiet() {
        for (int i = 0; i < 10; i++) {
            deliver.begin();
            NoticeFixture.pause(30);
        }
    }

    @Test
    void whatFailsIsSentAgainLaterUnderItsIdWithATimestampOfItsOwn() {
        var told = toldOf(1);
        told.receiver().answers(500);
        deliverUntil(told, 1);
        quiet();
        assertThat(told.receiver().received()).as("not before its time").hasSize(1);
        told.receiver().answers(200);
        later(Duration.ofSeconds(10));
        deliverUntil(told, 2);
        assertThat(waiting(told)).isZero();
        assertThat(outcomes(told)).containsExactly("ANSWERED_OTHERWISE", "DELIVERED");
        var first = told.receiver().received().getFirst();
        var second = told.receiver().received().getLast();
        assertThat(second.header("webhook-id")).isEqualTo(first.header("webhook-id"));
        assertThat(second.body()).isEqualTo(first.body());
        assertThat(Long.parseLong(second.header("webhook-timestamp")))
                .isEqualTo(Long.parseLong(first.header("webhook-timestamp")) + 10);
        NoticeFixture.assertSigned(first, told.secret());
        NoticeFixture.assertSigned(second, told.secret());
    }

    @ParameterizedTest
    @CsvSource({"503,3600,3600", "429,' 3600 ',3600", "503,99999999,86400", "500,3600,10", "503,-1,10",
            "503,'Wed, 25 Nov 2026 13:00:00 GMT',10", "429,soon,10", "503,1,10"})
    void anEndpointThatIsTooBusySaysWhenToComeAgain(int status, String after, long seconds) {
        var told = toldOf(2);
        told.receiver().answers((exchange, received) -> {
            exchange.getResponseHeaders().set("Retry-After", after);
            exchange.sendResponseHeaders(status, -1);
        });
        deliverUntil(told, 1);
        told.receiver().answers(200);
        if (seconds > 10) {
            later(Duration.ofSeconds(seconds - 10));
            quiet();
            assertThat(told.receiver().received()).as("not before").hasSize(1);
        }
        later(Duration.ofSeconds(10));
        deliverUntil(told, 3);
        assertThat(waiting(told)).isZero();
    }

    private static long got(Told told, UUID container) {
        return told.receiver().received().stream().filter(got -> got.container().equals(container.toString())).count();
    }

    @Test
    void aLaterNoticeOfAContainerWaitsForTheEarlierAndThoseOfOthersDoNot() {
        var told = fixture.told(List.of("HOLD"));
        var one = fixture.cylinderAt(told.site());
        var other = fixture.cylinderAt(told.site());
        fixture.lift(fixture.hold(one));
        fixture.lift(fixture.hold(other));
        told.receiver().answers((exchange, request) -> exchange.sendResponseHeaders(
                request.container().equals(one.toString()) ? 500 : 204, -1));
        while (got(told, other) < 2) {
            // the endpoint rests after what it did not take
            deliverUntil(told, told.receiver().received().size() + 1);
            later(Duration.ofMinutes(15));
        }
        assertThat(told.receiver().received().stream().filter(got -> got.container().equals(one.toString()))
                .map(Received::type)).isNotEmpty().containsOnly("container.held");
        assertThat(told.receiver().received().stream().filter(got -> got.container().equals(other.toString()))
                .map(Received::type)).containsExactly("container.held", "container.released");
        told.receiver().answers(204);
        told.receiver().forget();
        later(Duration.ofHours(3));
        deliverUntil(told, 2);
        assertThat(told.receiver().types()).containsExactly("container.held", "container.released");
        assertThat(waiting(told)).isZero();
    }

    @Test
    void afterTenAttemptsOverDaysItIsGivenUpAndTheNextIsSent() {
        var told = fixture.told(List.of("HOLD"));
        var id = fixture.cylinderAt(told.site());
        fixture.lift(fixture.hold(id));
        told.receiver().answers(503);
        var begun = clock.instant();
        for (int attempt = 1; attempt <= RetrySchedule.ATTEMPTS; attempt++) {
            deliverUntil(told, attempt);
            later(Duration.ofHours(31));
        }
        assertThat(Duration.between(begun, clock.instant())).isGreaterThan(Duration.ofDays(3));
        assertThat(told.receiver().types()).hasSize(RetrySchedule.ATTEMPTS).containsOnly("container.held");
        told.receiver().answers(204);
        deliverUntil(told, RetrySchedule.ATTEMPTS + 1);
        assertThat(told.receiver().types().getLast()).isEqualTo("container.released");
        var items = told.portal().get(told.path() + "/notices").expect(200).at("/items");
        assertThat(items.at("/0/status").asString()).isEqualTo("DELIVERED");
        assertThat(items.at("/1/status").asString()).isEqualTo("GIVEN_UP");
        assertThat(items.at("/1/attempts").asInt()).isEqualTo(RetrySchedule.ATTEMPTS);
    }

    @Test
    void goneSwitchesOffUntilItIsResumed() {
        var told = toldOf(2);
        told.receiver().answers(410);
        deliverUntil(told, 1);
        assertThat(told.portal().get(told.path()).text("/status")).isEqualTo("SWITCHED_OFF");
        assertThat(waiting(told)).isZero();
        told.receiver().answers(204);
        fixture.hold(fixture.cylinderAt(told.site()));
        quiet();
        assertThat(told.receiver().received()).hasSize(1);
        told.portal().post(told.path() + "/pause", "").expectProblem(409, "SUBSCRIPTION_NOT_ACTIVE");
        told.portal().post(told.path() + "/replays", Map.of("since", "2026-11-25T00:00:00Z"))
                .expectProblem(409, "SUBSCRIPTION_NOT_ACTIVE");
        told.portal().post(told.path() + "/resumption", "").expect(200);
        assertThat(told.portal().post(told.path() + "/replays", Map.of("since", "2026-11-25T00:00:00Z")).expect(202)
                .at("/replayed").asInt()).isEqualTo(2);
        deliverUntil(told, 3);
        assertThat(waiting(told)).isZero();
    }

    @Test
    void whatIsPausedIsKeptAndSentInOrderWhenItIsResumed() {
        var told = fixture.told(List.of("HOLD"));
        told.portal().post(told.path() + "/pause", "").expect(200);
        var id = fixture.cylinderAt(told.site());
        fixture.lift(fixture.hold(id));
        fixture.hold(id);
        quiet();
        assertThat(told.receiver().received()).isEmpty();
        assertThat(waiting(told)).isEqualTo(3);
        assertThat(told.portal().post(told.path() + "/resumption", "").expect(200).text("/status")).isEqualTo("ACTIVE");
        deliverUntil(told, 3);
        assertThat(told.receiver().types()).containsExactly("container.held", "container.released", "container.held");
    }

    @Test
    void aReplayedNoticeIsTheSameNotice() {
        var told = toldOf(2);
        deliverUntil(told, 2);
        var first = told.receiver().received().getFirst();
        assertThat(told.portal().post(told.path() + "/replays", Map.of("noticeId", first.header("webhook-id")))
                .expect(202).at("/replayed").asInt()).isEqualTo(1);
        deliverUntil(told, 3);
        var again = told.receiver().received().getLast();
        assertThat(again.header("webhook-id")).isEqualTo(first.header("webhook-id"));
        assertThat(again.text()).isEqualTo(first.text());
        told.portal().post(told.path() + "/replays", Map.of("noticeId", UUID.randomUUID()))
                .expectProblem(404, "NOT_FOUND");
        told.portal().post(told.path() + "/replays", Map.of()).expectProblem(400, "INVALID_INPUT");
        told.portal().post(told.path() + "/replays", Map.of("since", "2027-11-25T00:00:00Z"))
                .expectProblem(400, "INVALID_INPUT");
    }

    /** The hanging one holds its own turn only. */
    @Test
    void aDeadEndpointKeepsNobodyWaiting() throws IOException {
        var dead = new ArrayList<Told>();
        for (int i = 0; i < 5; i++) {
            var told = toldOf(2);
            told.receiver().hangs();
            dead.add(told);
        }
        var healthy = toldOf(10);
        healthy.portal().post(healthy.path() + "/pause", "").expect(200);
        // so patient that they hang until the end, however slow the machine
        var patient = new SendNotice(addresses, SystemDefaultDnsResolver.INSTANCE, Duration.ofMinutes(5));
        var waiting = new DeliverNotices(queue, patient, clock);
        NoticeFixture.until(waiting, () -> dead.stream().allMatch(told -> told.receiver().received().size() == 1));
        healthy.portal().post(healthy.path() + "/resumption", "").expect(200);
        deliverUntil(healthy, 10);
        assertThat(dead).allSatisfy(told -> {
            assertThat(inTurn(told)).as("they hang still").isTrue();
            assertThat(told.receiver().received()).as("one in flight").hasSize(1);
        });
        waiting.destroy();
        patient.destroy();
    }

    /** Two services on one database, each with a queue and threads of its own. */
    @Test
    void twoServicesSendEachNoticeOnceAndInOrder() {
        var tolds = new ArrayList<Told>();
        for (int i = 0; i < 4; i++) {
            var told = fixture.told(List.of("HOLD"));
            for (int j = 0; j < 5; j++) {
                var id = fixture.cylinderAt(told.site());
                fixture.lift(fixture.hold(id));
            }
            tolds.add(told);
        }
        var other = new DeliverNotices(queue, send, clock);
        long end = System.nanoTime() + Duration.ofMinutes(2).toNanos();
        while (tolds.stream().anyMatch(told -> waiting(told) > 0) && System.nanoTime() < end) {
            var beside = Thread.startVirtualThread(other::begin);
            deliver.begin();
            join(beside);
        }
        for (var told : tolds) {
            assertThat(told.receiver().received()).hasSize(10);
            var last = new HashMap<String, String>();
            for (var got : told.receiver().received()) {
                var before = last.put(got.container(), got.type());
                assertThat(got.type()).isEqualTo(before == null ? "container.held" : "container.released");
            }
            assertThat(new HashSet<>(told.receiver().received().stream().map(got -> got.header("webhook-id")).toList()))
                    .hasSize(10);
        }
        other.destroy();
    }

    private static void join(Thread thread) {
        try {
            thread.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** It took the turn, sent, and died before it could note anything. */
    @Test
    void whatAKilledServiceHadInHandIsSentByAnotherWhenItsLeaseHasRunOut() {
        var told = toldOf(1);
        var killed = claimOf(told);
        assertThat(queue.next(killed)).isPresent();
        quiet();
        assertThat(told.receiver().received()).as("it may be at it still").isEmpty();
        leaseRunsOut(told);
        deliverUntil(told, 1);
        assertThat(waiting(told)).isZero();
        assertThat(queue.next(killed)).as("its turn is over").isEmpty();
    }

    @Test
    void aSlowServiceThatLostItsTurnWritesNothing() {
        var told = toldOf(1);
        var slow = claimOf(told);
        var inHand = queue.next(slow).orElseThrow();
        leaseRunsOut(told);
        told.receiver().answers(500);
        deliverUntil(told, 1);
        assertThat(queue.record(slow, inHand, clock.instant(), new Attempt(Outcome.DELIVERED, 200, 1, null, null)))
                .isFalse();
        assertThat(outcomes(told)).containsExactly("ANSWERED_OTHERWISE");
        assertThat(waiting(told)).isEqualTo(1);
    }

    private Turn claimOf(Told told) {
        // others that still wait have nothing to send: each test ends its subscriptions
        var turn = queue.claim().orElseThrow();
        assertThat(turn.subscription()).isEqualTo(told.subscription());
        return turn;
    }

    private void leaseRunsOut(Told told) {
        jdbc.sql("update notice_turn set lease_until = now() - interval '1 second' where subscription_id = ?")
                .param(told.subscription()).update();
    }

    @Test
    void whileTwoSecretsAreValidBothSign() {
        var told = toldOf(1);
        var rotated = told.portal().post(told.path() + "/secret-rotation", Map.of("overlapHours", 2)).expect(200);
        var fresh = rotated.text("/secret");
        deliverUntil(told, 1);
        var both = told.receiver().received().getLast();
        assertThat(both.header("webhook-signature")).isEqualTo(
                NoticeFixture.signature(both, fresh) + " " + NoticeFixture.signature(both, told.secret()));
        later(Duration.ofHours(2));
        told.portal().post(told.path() + "/test", "").expect(202);
        deliverUntil(told, 2);
        var one = told.receiver().received().getLast();
        assertThat(one.header("webhook-signature")).isEqualTo(NoticeFixture.signature(one, fresh));
        var last = told.portal().post(told.path() + "/secret-rotation", Map.of("overlapHours", 0)).expect(200)
                .text("/secret");
        told.portal().post(told.path() + "/test", "").expect(202);
        deliverUntil(told, 3);
        var only = told.receiver().received().getLast();
        assertThat(only.header("webhook-signature")).isEqualTo(NoticeFixture.signature(only, last));
    }

    /** Endpoints that fail at random: at least once, and per container in order by first arrival. */
    @Test
    void whateverFailsNothingIsLostAndTheOrderIsKept() {
        var random = new Random(20261125);
        var told = fixture.told(List.of("HOLD"));
        var expected = new HashMap<String, Integer>();
        for (int i = 0; i < 6; i++) {
            var id = fixture.cylinderAt(told.site());
            for (int j = 0; j < 2; j++) {
                fixture.lift(fixture.hold(id));
            }
            expected.put(id.toString(), 4);
        }
        var failures = new AtomicInteger();
        told.receiver().answers((exchange, request) -> {
            boolean fails = random.nextInt(3) == 0;
            failures.addAndGet(fails ? 1 : 0);
            exchange.sendResponseHeaders(fails ? 500 : 204, -1);
        });
        long end = System.nanoTime() + Duration.ofMinutes(2).toNanos();
        while (waiting(told) > 0 && System.nanoTime() < end) {
            deliver.begin();
            NoticeFixture.pause(40);
            later(Duration.ofHours(1));
        }
        assertThat(failures.get()).isPositive();
        assertThat(waiting(told)).isZero();
        var seen = new HashSet<String>();
        var arrived = new HashMap<String, List<String>>();
        for (var got : told.receiver().received()) {
            if (seen.add(got.header("webhook-id"))) {
                arrived.computeIfAbsent(got.container(), fresh -> new ArrayList<>()).add(got.type());
            }
        }
        assertThat(arrived.keySet()).isEqualTo(expected.keySet());
        assertThat(arrived.values()).allSatisfy(types -> assertThat(types).containsExactly("container.held",
                "container.released", "container.held", "container.released"));
    }

    @Test
    void attemptsAndNoticesAreReadInPages() {
        var told = toldOf(5);
        deliverUntil(told, 5);
        for (var list : List.of("/attempts", "/notices")) {
            var ids = new HashSet<String>();
            var page = told.portal().get(told.path() + list + "?size=2").expect(200);
            int pages = 1;
            while (true) {
                ids.addAll(page.at("/items").findValuesAsString(list.equals("/attempts") ? "noticeId" : "occurredAt"));
                var next = page.at("/next").asString();
                if (next.isEmpty()) {
                    break;
                }
                page = told.portal().get(told.path() + list + "?size=2&cursor=" + next).expect(200);
                pages++;
            }
            assertThat(pages).isEqualTo(3);
            if (list.equals("/attempts")) {
                assertThat(ids).hasSize(5);
            }
        }
        var attempt = told.portal().get(told.path() + "/attempts").at("/items/0");
        assertThat(attempt.at("/httpStatus").asInt()).isEqualTo(204);
        assertThat(attempt.at("/tookMs").asInt()).isBetween(0, 20_000);
        assertThat(Instant.parse(attempt.at("/attemptedAt").asString())).isEqualTo(clock.instant());
        told.portal().get(told.path() + "/attempts?cursor=nonsense").expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void whatIsOldIsPurgedAndWhatWaitsForWeeksIsGivenUp() {
        var told = toldOf(1);
        deliverUntil(told, 1);
        told.portal().post(told.path() + "/pause", "").expect(200);
        fixture.hold(fixture.cylinderAt(told.site()));
        var upkeep = new NoticeUpkeep(jdbc, clock);
        later(Duration.ofDays(29));
        upkeep.run();
        assertThat(waiting(told)).isEqualTo(1);
        later(Duration.ofDays(2));
        upkeep.run();
        assertThat(waiting(told)).isZero();
        assertThat(told.portal().get(told.path() + "/notices").at("/items")).hasSize(2);
        later(Duration.ofDays(60));
        upkeep.run();
        assertThat(told.portal().get(told.path() + "/notices").at("/items")).isEmpty();
        assertThat(told.portal().get(told.path() + "/attempts").at("/items")).isEmpty();
    }
}
