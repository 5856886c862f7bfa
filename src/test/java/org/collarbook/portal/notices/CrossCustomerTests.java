package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

import org.collarbook.portal.notices.NoticeFixture.Told;
import org.collarbook.portal.notices.Receiver.Received;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Containers that go to and fro between customers at random: what each endpoint gets, byte by byte. */
@RegisterTest
class CrossCustomerTests {

    private static final long SEED = 20261125;

    private final Given given;
    private final DeliverNotices deliver;
    private final TellDueSoon dueSoon;
    private final JdbcClient jdbc;
    private final NoticeFixture fixture;

    CrossCustomerTests(Api api, Given given, DeliverNotices deliver, TellDueSoon dueSoon, JdbcClient jdbc) {
        this.given = given;
        this.deliver = deliver;
        this.dueSoon = dueSoon;
        this.jdbc = jdbc;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        fixture.close();
    }

    /** Whose sites the container has stood at, in the order of the moves. */
    private record Model(Map<UUID, UUID> siteOf, Map<UUID, List<String>> movesOf, Map<UUID, Set<UUID>> everAt) {}

    @Test
    void noEndpointGetsAByteOfWhatIsNotItsCustomers() {
        var random = new Random(SEED);
        var tolds = List.of(fixture.told(NoticeFixture.EVERY_KIND), fixture.told(NoticeFixture.EVERY_KIND),
                fixture.told(NoticeFixture.EVERY_KIND));
        var owner = new HashMap<UUID, UUID>();
        var sites = new ArrayList<UUID>();
        for (var told : tolds) {
            for (var site : List.of(told.site(), given.site(told.customer()))) {
                owner.put(site, told.customer());
                sites.add(site);
            }
        }
        sites.add(given.site(null));
        var model = new Model(new HashMap<>(), new HashMap<>(), new HashMap<>());
        var containers = List.of(given.registered(), given.registered(), given.registered(), given.registered());
        play(random, sites, owner, containers, model);
        dueSoon.scan();
        NoticeFixture.until(deliver, () -> tolds.stream().allMatch(told -> told.portal().get(told.path()).expect(200)
                .at("/waiting").asLong() == 0));
        for (var told : tolds) {
            check(told, tolds, model);
        }
    }

    private void play(Random random, List<UUID> sites, Map<UUID, UUID> owner, List<UUID> containers, Model model) {
        var at = Instant.parse("2026-11-01T09:00:00Z");
        for (int move = 0; move < 60; move++) {
            var container = containers.get(random.nextInt(containers.size()));
            var site = sites.get(random.nextInt(sites.size()));
            var before = model.siteOf.get(container);
            if (site.equals(before)) {
                continue;
            }
            at = at.plus(Duration.ofHours(1));
            given.moved(container, site, at.toString());
            model.siteOf.put(container, site);
            note(owner.get(site), before == null ? null : owner.get(before), container, model);
            if (random.nextInt(4) == 0) {
                fixture.lift(fixture.hold(container));
            }
        }
    }

    private static void note(@Nullable UUID to, @Nullable UUID from,
            UUID container, Model model) {
        if (from != null && !from.equals(to)) {
            model.movesOf.computeIfAbsent(from, fresh -> new ArrayList<>()).add(container + " container.left");
        }
        if (to != null) {
            model.movesOf.computeIfAbsent(to, fresh -> new ArrayList<>())
                    .add(container + (to.equals(from) ? " container.moved" : " container.arrived"));
            model.everAt.computeIfAbsent(to, fresh -> new HashSet<>()).add(container);
        }
    }

    private void check(Told told, List<Told> all, Model model) {
        var moves = told.receiver().received().stream().filter(got -> got.type().matches(
                "container.(arrived|moved|left)")).map(got -> got.container() + " " + got.type()).toList();
        assertThat(moves).as("seed " + SEED).containsExactlyElementsOf(model.movesOf.get(told.customer()));
        var inside = new HashSet<String>();
        for (Received got : told.receiver().received()) {
            NoticeFixture.assertSigned(got, told.secret());
            switch (got.type()) {
                case "container.arrived" -> inside.add(got.container());
                case "container.left" -> inside.remove(got.container());
                case "container.due_soon" -> {
                    // told by a scan, after all moves
                }
                default -> assertThat(inside).as(got.text()).contains(got.container());
            }
            for (var other : all) {
                if (!other.equals(told)) {
                    assertThat(got.text()).doesNotContain(namesOf(other));
                }
            }
        }
    }

    /** Whatever names a customer or a site of theirs. */
    private List<String> namesOf(Told told) {
        return jdbc.sql("""
                select id::text from site where customer_id = :customer union select code from site
                where customer_id = :customer union select name from site where customer_id = :customer
                union select id::text from customer where id = :customer union select code from customer
                where id = :customer union select name from customer where id = :customer""")
                .param("customer", told.customer()).query(String.class).list();
    }
}
