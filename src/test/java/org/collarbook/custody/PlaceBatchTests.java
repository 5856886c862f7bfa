package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.PlaceBatch.CustomerLine;
import org.collarbook.custody.PlaceBatch.Placing;
import org.collarbook.custody.PlaceBatch.SiteLine;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionTemplate;

@RegisterTest
class PlaceBatchTests {

    private static final Caller CLERK = new Caller(UUID.randomUUID(), "clerk", Set.of(Role.CLERK),
            CustomerScope.EVERYONE);
    private static final ZoneId CHICAGO = ZoneId.of("America/Chicago");

    private final PlaceBatch batch;
    private final Places places;
    private final PlaceDisputes disputes;
    private final Fills fills;
    private final TransactionTemplate transaction;
    private final Given given;
    private final Tables tables;

    PlaceBatchTests(PlaceBatch batch, Places places, PlaceDisputes disputes, Fills fills,
            TransactionTemplate transaction, Given given,
            Tables tables) {
        this.batch = batch;
        this.places = places;
        this.disputes = disputes;
        this.fills = fills;
        this.transaction = transaction;
        this.given = given;
        this.tables = tables;
    }

    private static SiteLine site(String code, UUID customer, @Nullable String address,
            @Nullable Coordinates coordinates) {
        return new SiteLine(code, "Site " + code, SiteKind.CUSTOMER, customer, address, coordinates, CHICAGO,
                Jurisdiction.US);
    }

    @Test
    void customersAndSitesAreOpenedOnceAndChangedOnlyWhereTheLedgerSaysMore() {
        var code = Given.serial();
        var other = Given.serial();
        var first = transaction.execute(status -> batch.upsertCustomers(
                List.of(new CustomerLine(code, "Alder"), new CustomerLine(other, "Birch"))));
        var again = transaction.execute(status -> batch.upsertCustomers(
                List.of(new CustomerLine(code, "Alder Farms"), new CustomerLine(other, "Birch"))));
        assertThat(again).isEqualTo(first).containsOnlyKeys(code, other);
        assertThat(places.customer(first.get(code))).get().extracting(NamedCustomer::name, NamedCustomer::version)
                .containsExactly("Alder Farms", 1);
        assertThat(places.customer(first.get(other))).get().extracting(NamedCustomer::version).isEqualTo(0);

        var customer = first.get(code);
        var here = new Coordinates(41.5, -93.5);
        var ids = transaction.execute(status -> batch.upsertSites(List.of(site(code, customer, "1 Mill Road", here))));
        tables.unchangedBy(() -> {
            var same = transaction.execute(status -> batch.upsertSites(List.of(site(code, customer, null, null))));
            assertThat(same).isEqualTo(ids);
        });
        var place = places.site(ids.get(code)).orElseThrow();
        assertThat(place.address()).isEqualTo("1 Mill Road");
        assertThat(place.coordinates()).isEqualTo(here);
    }

    @Test
    void placesManyAndKeepsLaterMovements() {
        var depot = given.site(null);
        var shop = given.site(null);
        var fresh = given.registered();
        var standing = given.registered();
        var movedSince = given.registered();
        given.moved(standing, shop, "2026-11-01T08:00:00Z");
        given.moved(movedSince, shop, "2026-11-20T08:00:00Z");
        long movements = tables.count("movement");
        var at = Instant.parse("2026-11-10T06:00:00Z");

        transaction.executeWithoutResult(status -> batch.place(List.of(new Placing(fresh, depot, at),
                new Placing(standing, depot, at), new Placing(movedSince, depot, at)), CLERK.id()));

        assertThat(tables.count("movement")).isEqualTo(movements + 3);
        var now = places.of(List.of(fresh, standing, movedSince));
        assertThat(now.get(fresh).siteId()).isEqualTo(depot);
        assertThat(now.get(standing).siteId()).isEqualTo(depot);
        assertThat(now.get(movedSince).siteId()).isEqualTo(shop);
    }

    @Test
    void aLaterRowEndsADisputeAndOneOfTheSameMomentOpensOne() {
        var depot = given.site(null);
        var shop = given.site(null);
        var seen = given.registered();
        var same = given.registered();
        var never = given.registered();
        given.moved(seen, depot, "2026-11-01T08:00:00Z");
        given.moved(same, depot, "2026-11-10T06:00:00Z");
        given.seen(seen, shop, "2026-11-02T08:00:00Z");
        given.seen(never, shop, "2026-11-12T08:00:00Z");
        assertThat(disputes.of(List.of(seen, same, never))).containsOnlyKeys(seen);
        var at = Instant.parse("2026-11-10T06:00:00Z");

        transaction.executeWithoutResult(status -> batch.place(List.of(new Placing(seen, depot, at),
                new Placing(same, shop, at), new Placing(never, depot, at)), CLERK.id()));

        assertThat(disputes.of(List.of(seen, same, never))).containsOnlyKeys(same, never);
        assertThat(places.of(List.of(same)).get(same).siteId()).as("the first recorded").isEqualTo(depot);
    }

    @Test
    void aFillIsKeptOnceAndTheLatestNotAfterADayIsTold() {
        var container = given.registered();
        var may = new Fill(container, LocalDate.of(2026, 5, 20), new BigDecimal("19.9"));
        var november = new Fill(container, LocalDate.of(2026, 11, 1), null);

        assertThat(fills.record(may, CLERK)).isTrue();
        assertThat(fills.record(may, CLERK)).isFalse();
        assertThat(fills.insert(List.of(may, november, november), CLERK.id())).isEqualTo(1);

        var ids = List.of(container);
        assertThat(fills.latest(ids, LocalDate.of(2026, 5, 19))).isEmpty();
        assertThat(fills.latest(ids, LocalDate.of(2026, 10, 31))).containsEntry(container, may.filledOn());
        assertThat(fills.latest(ids, LocalDate.of(2026, 11, 1))).containsEntry(container, november.filledOn());
    }
}
