package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What the plan makes of a stored clock; today is 2026-11-25, and the plan runs through 2027-05-24. */
@RegisterTest
class ReadInputTests {

    private final Api api;
    private final Given given;
    private final ReadInput input;
    private final JdbcClient jdbc;

    ReadInputTests(Api api, Given given, ReadInput input, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.input = input;
        this.jdbc = jdbc;
    }

    private ReadInput.Read read(PlanFixture fixture) {
        return input.read(new Asked(TestClock.TODAY, 6, fixture.depot,
                new PlanInput.ShopCapacity(5, new TreeMap<>())));
    }

    /** The last day of a due month by 49 CFR 180.205(c); the words as the function {@code container_status} gives them. */
    @ParameterizedTest
    @CsvSource(nullValues = "-", value = {
            "DUE, 2027-02-01, -, -, DUE, 2027-02-28",
            "DUE, 2026-11-01, -, -, DUE, 2026-11-30",
            "DUE, 2026-05-01, -, -, DUE, 2026-05-31",
            // at the end of its service life, and before that where the month is sooner
            "DUE, 2027-04-01, 2027-02-11, CONDEMNED, DUE, 2027-02-10",
            "DUE, 2027-01-01, 2027-02-11, CONDEMNED, DUE, 2027-01-31",
            "DUE, 2027-04-01, 2026-11-25, CONDEMNED, OUT_OF_SERVICE, -",
            "DUE, 2027-04-01, 2026-11-26, ON_HOLD, DUE, 2026-11-25",
            "DUE, 2027-04-01, 2026-11-01, OVERDUE, DUE, 2026-10-31",
            "NOT_REQUIRED, -, 2027-03-01, OVERDUE, DUE, 2027-02-28",
            "NOT_REQUIRED, -, -, -, -, -",
            "ON_HOLD, 2027-02-01, -, -, OUT_OF_SERVICE, -",
            "REJECTED, -, -, -, OUT_OF_SERVICE, -",
            "CONDEMNED, -, -, -, OUT_OF_SERVICE, -",
            "UNDETERMINED, -, -, -, UNDETERMINED, -",
            "OTHER_AUTHORITY, -, -, -, OTHER_AUTHORITY, -",
            // a permit that has ended, and a fact dated ahead that has arrived before its clock was run anew
            "DUE, 2027-04-01, 2026-11-01, UNDETERMINED, UNDETERMINED, -",
            "DUE, 2026-05-01, 2026-11-01, IN_DATE, UNDETERMINED, -",
            // far ahead
            "DUE, 2031-02-01, -, -, -, -"})
    void readsFromAClockWhenACylinderMustComeBack(String stored, @Nullable LocalDate due, @Nullable LocalDate changesOn,
            @Nullable String changesTo, @Nullable String standing, @Nullable LocalDate lastDay) {
        var fixture = new PlanFixture(api, given, jdbc);
        var site = fixture.customerSite();
        fixture.route(fixture.vehicle(3), site);
        var id = fixture.cylinder(site, "2015-02");
        jdbc.sql("""
                update requirement set standing = ?, due = ?, changes_on = ?, changes_to = ?
                where container_id = ? and decisive""").params(stored, due, changesOn, changesTo, id).update();
        var read = read(fixture);
        if (standing == null) {
            assertThat(read.input().cylinders()).isEmpty();
            assertThat(read.beside().notRequired() + read.beside().dueLater()).isEqualTo(1);
        } else {
            assertThat(read.input().cylinders()).singleElement().satisfies(one -> {
                assertThat(one.id()).isEqualTo(id);
                assertThat(one.site()).isEqualTo(site);
                assertThat(one.standing()).hasToString(standing);
                assertThat(one.lastDay()).isEqualTo(lastDay);
            });
        }
    }

    @Test
    void whatIsLostIsNotPlanned() {
        var fixture = new PlanFixture(api, given, jdbc);
        var site = fixture.customerSite();
        fixture.route(fixture.vehicle(3), site);
        var lost = fixture.cylinder(site, "2015-02");
        var dented = fixture.cylinder(site, "2015-02");
        hold(lost, "LOST");
        hold(dented, "DENTED");
        assertThat(read(fixture).input().cylinders()).extracting(Cylinder::id).containsExactly(dented);
        assertThat(read(fixture).beside().elsewhere()).isEqualTo(1);
    }

    private void hold(UUID container, String reason) {
        api.as(Role.YARD).post("/api/containers/" + container + "/holds", Map.of("reason", reason))
                .expect(201);
    }

    /** At a Canadian site the Canadian rule is off; that the cylinder was due by 49 CFR stands all the same. */
    @Test
    void whatOneAuthorityCallsDueIsPlannedThoughAnotherIsSilent() {
        var fixture = new PlanFixture(api, given, jdbc);
        var place = Given.depot();
        place.put("jurisdiction", "CA");
        var site = UUID.fromString(api.as(Role.CLERK).post("/api/sites", place).expect(201).id());
        fixture.route(fixture.vehicle(3), site);
        fixture.cylinder(site, "2010-05");
        assertThat(read(fixture).input().cylinders()).singleElement()
                .satisfies(one -> assertThat(one.lastDay()).isEqualTo("2022-05-31"));
    }

    /** A tank is worked on where it stands, and what is at the depot need not be pulled. */
    @Test
    void onlyCylindersThatAreOutArePlanned() {
        var fixture = new PlanFixture(api, given, jdbc);
        var site = fixture.customerSite();
        fixture.route(fixture.vehicle(3), site);
        var tank = Given.cylinder();
        tank.put("kind", "STATIONARY_TANK");
        tank.put("specification", "ASME");
        tank.put("waterCapacity", "500 gal");
        fixture.at(site, tank);
        fixture.cylinder(fixture.depot, "2010-05");
        assertThat(read(fixture).input().cylinders()).isEmpty();
    }
}
