package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.BooleanSupplier;

import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.portal.notices.Receiver.Received;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Customers with endpoints, and what happens to their containers. */
final class NoticeFixture implements AutoCloseable {

    static final List<String> EVERY_KIND = List.of("DUE_SOON", "HOLD", "MOVED", "CONDEMNED");

    final Api api;
    final Given given;
    private final JdbcClient jdbc;
    private final List<Receiver> receivers = new ArrayList<>();

    /** Ends what other tests subscribed to, for what waits of theirs would be sent too. */
    NoticeFixture(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        endAll();
    }

    private void endAll() {
        jdbc.sql("update notice_subscription set status = 'ENDED' where status <> 'ENDED'").update();
    }

    /** A customer whose endpoint is told. */
    record Told(UUID customer, UUID site, UUID subscription, String secret, Receiver receiver, Api.Session portal) {

        String path() {
            return "/api/notice-subscriptions/" + subscription;
        }
    }

    Receiver receiver() {
        var receiver = new Receiver();
        receivers.add(receiver);
        return receiver;
    }

    static Map<String, Object> wanted(String url, List<String> kinds) {
        var body = new LinkedHashMap<String, Object>();
        body.put("url", url);
        body.put("kinds", kinds);
        if (kinds.contains("DUE_SOON")) {
            body.put("lead", Map.of("months", 2));
        }
        return body;
    }

    Told told(List<String> kinds) {
        var customer = given.customer();
        return told(customer, given.site(customer), wanted(receiver().url(), kinds));
    }

    Told told(UUID customer, UUID site, Map<String, Object> wanted) {
        var portal = api.asPortalOf(new CustomerId(customer));
        var made = portal.post("/api/customers/" + customer + "/notice-subscriptions", wanted).expect(201);
        return new Told(customer, site, UUID.fromString(made.text("/subscription/id")), made.text("/secret"),
                receivers.getLast(), portal);
    }

    UUID cylinderAt(UUID site) {
        return cylinderAt(site, Given.cylinder());
    }

    UUID cylinderAt(UUID site, Map<String, @Nullable Object> body) {
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    /** The hold's id. */
    String hold(UUID container) {
        return api.as(Role.YARD).post("/api/containers/" + container + "/holds", Map.of("reason", "LOST")).expect(201)
                .text("/hold/id");
    }

    Answer lift(String hold) {
        return api.as(Role.CLERK).post("/api/holds/" + hold + "/lifts", Map.of("by", "CLERK", "note", "found"))
                .expect(201);
    }

    /** By the specification alone, with nothing of the service. */
    static void assertSigned(Received received, String secret) {
        assertThat(List.of(received.header("webhook-signature").split(" "))).contains(signature(received, secret));
    }

    static String signature(Received received, String secret) {
        try {
            var mac = Mac.getInstance("HmacSHA256");
            mac.init(new SecretKeySpec(Base64.getDecoder().decode(secret.substring("whsec_".length())), "HmacSHA256"));
            mac.update((received.header("webhook-id") + "." + received.header("webhook-timestamp") + ".")
                    .getBytes(StandardCharsets.UTF_8));
            return "v1," + Base64.getEncoder().encodeToString(mac.doFinal(received.body()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Sends until it has come about; fails after a while. */
    static void until(DeliverNotices deliver, BooleanSupplier cameAbout) {
        long end = System.nanoTime() + Duration.ofMinutes(2).toNanos();
        while (!cameAbout.getAsBoolean()) {
            assertThat(System.nanoTime()).as("it did not come about").isLessThan(end);
            deliver.begin();
            pause(20);
        }
    }

    static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        receivers.forEach(Receiver::close);
        endAll();
    }
}
