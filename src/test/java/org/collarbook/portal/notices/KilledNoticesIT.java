package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

import org.collarbook.lifecycle.RunningJar;
import org.collarbook.lifecycle.SentLedger;
import org.collarbook.portal.notices.Receiver.Received;
import org.collarbook.testing.OwnServer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Two packaged services on one database: each notice is told once. One is killed as it sends, or as it looks for due
 * months, and the other goes on: nothing is lost, the order is kept, and told twice is at most what was on its way. The
 * other stands still meanwhile, so that it is surely the killed one that was at work.
 */
class KilledNoticesIT {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final int ENDPOINTS = 4;
    private static final int CONTAINERS = 6;
    private static final int FLEET = 4_000;
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    @TempDir
    private Path folder;
    private final List<Receiver> receivers = new ArrayList<>();
    private OwnServer server;
    private RunningJar one;
    private RunningJar other;
    private String key = "";

    private record Told(String site, String subscription, Receiver receiver) {}

    @BeforeEach
    void startTwo() throws Exception {
        server = OwnServer.start(folder);
        one = started();
        key = one.printedKey().orElseThrow();
        other = started();
    }

    @AfterEach
    void stopAll() throws IOException {
        receivers.forEach(Receiver::close);
        one.close();
        other.close();
        server.close();
    }

    private RunningJar started() throws Exception {
        return RunningJar.start(folder, Stream.concat(Arrays.stream(server.arguments()), Stream.of(
                "--collarbook.notices.allow-http=true", "--collarbook.notices.allow-addresses=127.0.0.0/8"))
                .toArray(String[]::new)).awaitUp();
    }

    @Test
    void oneOfTwoIsKilledAsItSends() throws Exception {
        var tolds = new ArrayList<Told>();
        for (int i = 0; i < ENDPOINTS; i++) {
            tolds.add(told("C" + i, "[\"HOLD\"]", ""));
            for (int j = 0; j < CONTAINERS; j++) {
                heldAndReleased(container(tolds.getLast().site));
            }
        }
        await(() -> tolds.stream().allMatch(told -> received(told).size() >= 2 * CONTAINERS));
        Thread.sleep(3000);
        for (var told : tolds) {
            assertThat(received(told)).as("two services told it once").hasSize(2 * CONTAINERS);
        }

        other.standStill();
        var killed = new CountDownLatch(1);
        for (var told : tolds) {
            is(told, "pause");
            told.receiver.forget();
            told.receiver.answers((exchange, received) -> {
                // the third is on its way until the service is killed
                awaitAfterTwo(told, killed);
                exchange.sendResponseHeaders(204, -1);
            });
            for (int j = 0; j < CONTAINERS; j++) {
                heldAndReleased(container(told.site));
            }
        }
        for (var told : tolds) {
            is(told, "resumption");
        }
        await(() -> tolds.stream().allMatch(told -> received(told).size() == 3));
        one.kill();
        killed.countDown();
        other.goOn();
        await(() -> tolds.stream().allMatch(told -> ids(told).size() >= 2 * CONTAINERS));
        Thread.sleep(3000);
        for (var told : tolds) {
            assertThat(ids(told)).hasSize(2 * CONTAINERS);
            assertThat(received(told)).as("what was on its way once more").hasSize(2 * CONTAINERS + 1);
            assertHeldBeforeReleased(told);
        }
    }

    private static void awaitAfterTwo(Told told, CountDownLatch killed) {
        if (received(told).size() > 2) {
            try {
                killed.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private void is(Told told, String changed) throws Exception {
        var answer = one.post("/api/notice-subscriptions/" + told.subscription + "/" + changed, key, "");
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    }

    @Test
    void oneOfTwoIsKilledAsItLooksForDueMonths() throws Exception {
        var ledger = new StringBuilder("specification,maker,serial,manufactured,coated,lading,exclusive,corrosion_free,"
                + "marks_legible,collar_read,site,site_kind,customer,site_zone,site_jurisdiction\r\n");
        for (int i = 0; i < FLEET; i++) {
            ledger.append("DOT-4BA240,KIL,N").append(i)
                    .append(",5-04,yes,LPG,yes,yes,yes,yes,S,CUSTOMER,C,America/Chicago,US\r\n");
        }
        var path = SentLedger.handIn(one, key, ledger.toString());
        SentLedger.until(one, key, path, SentLedger::isChecked);
        SentLedger.commit(one, key, path);
        SentLedger.until(one, key, path, SentLedger::isCommitted);
        var customer = json(one.get("/api/customers", key).body()).at("/items/0/id").asString();

        other.standStill();
        String subscription;
        int before;
        try (var ahead = server.owner(); var behind = server.owner()) {
            lock(ahead);
            subscription = subscribed(customer, receiver(), "[\"DUE_SOON\"]", ",\"lead\":{\"months\":2}");
            awaitWaiting(ahead, 1);
            // locks are given in the order in which they were asked for: after the first chunk, and before the second
            var locked = CompletableFuture.runAsync(() -> lock(behind), Thread::startVirtualThread);
            awaitWaiting(ahead, 2);
            ahead.rollback();
            locked.get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
            before = notices(one, subscription, Integer.MAX_VALUE).size();
            one.kill();
            behind.rollback();
        }
        other.goOn();
        await(() -> notices(other, subscription, Integer.MAX_VALUE).size() >= FLEET);
        assertThat(before).as("it was killed in the middle").isBetween(1, FLEET - 1);
        Thread.sleep(3000);
        var told = notices(other, subscription, Integer.MAX_VALUE);
        assertThat(told).as("each due month once").hasSize(FLEET)
                .allSatisfy(notice -> assertThat(notice.path("type").asString()).isEqualTo("container.due_soon"));
        var containers = new HashSet<String>();
        told.forEach(notice -> containers.add(notice.path("containerId").asString()));
        assertThat(containers).hasSize(FLEET);
    }

    /** Nobody else notes what was told until the connection rolls back. */
    private static void lock(Connection owner) {
        try (var statement = owner.createStatement()) {
            owner.setAutoCommit(false);
            statement.execute("lock table notice_due_told in share mode");
        } catch (SQLException failed) {
            throw new IllegalStateException(failed);
        }
    }

    private static void awaitWaiting(Connection owner, int forTheLock) throws Exception {
        var jdbc = JdbcClient.create(new SingleConnectionDataSource(owner, true));
        await(() -> jdbc.sql("select count(*) from pg_locks where not granted and relation ="
                + " 'notice_due_told'::regclass").query(Integer.class).single() >= forTheLock);
    }

    private Receiver receiver() {
        receivers.add(new Receiver());
        return receivers.getLast();
    }

    private Told told(String customer, String kinds, String lead) throws Exception {
        var id = created("/api/customers", "{\"code\":\"" + customer + "\",\"name\":\"Larkspur Foods\"}");
        var site = created("/api/sites", """
                {"code":"S-%s","name":"Dock","kind":"CUSTOMER","customerId":"%s","zone":"America/Chicago",
                 "jurisdiction":"US"}""".formatted(customer, id));
        var receiver = receiver();
        return new Told(site, subscribed(id, receiver, kinds, lead), receiver);
    }

    private String subscribed(String customer, Receiver receiver, String kinds, String lead) throws Exception {
        var answer = one.post("/api/customers/" + customer + "/notice-subscriptions", key,
                "{\"url\":\"" + receiver.url() + "\",\"kinds\":" + kinds + lead + "}");
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        return json(answer.body()).at("/subscription/id").asString();
    }

    private String container(String site) throws Exception {
        var id = created("/api/containers", """
                {"kind":"CYLINDER","specification":"DOT-4BA240","maker":"QX","serial":"%s","manufactured":"6-20"}"""
                .formatted("K" + System.nanoTime()));
        created("/api/movements", "{\"containerId\":\"" + id + "\",\"toSite\":\"" + site
                + "\",\"occurredAt\":\"2026-11-20T09:00:00Z\"}");
        return id;
    }

    private void heldAndReleased(String container) throws Exception {
        var held = one.post("/api/containers/" + container + "/holds", key, "{\"reason\":\"LOST\"}");
        assertThat(held.statusCode()).as(held.body()).isEqualTo(201);
        created("/api/holds/" + json(held.body()).at("/hold/id").asString() + "/lifts",
                "{\"by\":\"CLERK\",\"note\":\"found\"}");
    }

    private String created(String path, String body) throws Exception {
        var answer = one.post(path, key, body);
        assertThat(answer.statusCode()).as(path + " " + answer.body()).isEqualTo(201);
        return json(answer.body()).path("id").asString();
    }

    private static JsonNode json(String body) {
        return JSON.readTree(body);
    }

    private List<JsonNode> notices(RunningJar service, String subscription, int most) throws Exception {
        var found = new ArrayList<JsonNode>();
        var cursor = "";
        do {
            var page = json(service.get("/api/notice-subscriptions/" + subscription + "/notices?size="
                    + Math.min(most, 1000) + "&cursor=" + cursor, key).body());
            page.path("items").forEach(found::add);
            cursor = page.path("next").asString("");
        } while (!cursor.isEmpty() && found.size() < most);
        return found;
    }

    private static List<Received> received(Told told) {
        return told.receiver.received();
    }

    private static HashSet<String> ids(Told told) {
        var ids = new HashSet<String>();
        received(told).forEach(got -> ids.add(got.header("webhook-id")));
        return ids;
    }

    private static void assertHeldBeforeReleased(Told told) {
        Map<String, List<String>> types = new HashMap<>();
        for (var got : received(told)) {
            types.computeIfAbsent(got.container(), fresh -> new ArrayList<>()).add(got.type());
        }
        assertThat(types).hasSize(CONTAINERS);
        assertThat(types.values()).allSatisfy(each -> assertThat(each.stream().distinct().toList())
                .containsExactly("container.held", "container.released"));
        assertThat(types.values()).allSatisfy(each -> assertThat(each).isSorted());
    }

    private interface Condition {
        boolean holds() throws Exception;
    }

    private static void await(Condition condition) throws Exception {
        for (long end = System.nanoTime() + PATIENCE.toNanos(); !condition.holds(); Thread.sleep(50)) {
            assertThat(System.nanoTime()).as("it did not come about").isLessThan(end);
        }
    }
}
