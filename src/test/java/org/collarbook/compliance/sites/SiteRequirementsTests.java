package org.collarbook.compliance.sites;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.platform.Caution;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 172 gallons and 40-B:C: common practice, no source. What is due: 29 CFR 1910.157(e), (f) and Table L-1. */
@RegisterTest
class SiteRequirementsTests {

    private static final String ON = "?enable=COMMON_PRACTICE";

    private final Api.Session filler;
    private final Api.Session yard;
    private final Given given;

    SiteRequirementsTests(Api api, Given given) {
        this.filler = api.as(Role.FILLER);
        this.yard = api.as(Role.YARD);
        this.given = given;
    }

    private UUID siteWithTank(@Nullable String capacity) {
        var site = given.site(given.customer());
        var tank = Given.cylinder();
        tank.put("kind", "STATIONARY_TANK");
        tank.put("specification", "ASME");
        tank.put("waterCapacity", capacity);
        tank.put("servicePressure", "250");
        tank.remove("tare");
        given.moved(given.registered(tank), site, "2026-11-20T08:00:00Z");
        given.moved(given.registered(), site, "2026-11-20T08:00:00Z");
        return site;
    }

    private void extinguisher(UUID site, @Nullable Integer rating, String... maintained) {
        var body = new HashMap<String, @Nullable Object>(Map.of("label", Given.serial(), "type",
                "DRY_CHEMICAL_STORED_PRESSURE", "manufactured", "2022-05"));
        body.put("ratingBC", rating);
        var path = "/api/sites/" + site + "/extinguishers";
        var id = yard.post(path, body).expect(201).id();
        for (var month : maintained) {
            yard.post(path + "/" + id + "/records", Map.of("month", month, "method", "EXTINGUISHER_MAINTAINED", "by",
                    "M. Holt")).expect(201);
        }
    }

    private Answer asked(UUID site, String query) {
        return filler.get("/api/sites/" + site + "/requirements" + query).expect(200);
    }

    private static List<String> codes(Answer answer, String pointer) {
        var codes = new ArrayList<String>();
        answer.at(pointer).forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    @Test
    void aLargeTankAsksForAnExtinguisherThatIsKeptUp() {
        var site = siteWithTank("500 gal");
        var bare = asked(site, ON);
        assertThat(bare.text("/outcome")).as(bare.body()).isEqualTo("NOT_MET");
        assertThat(codes(bare, "/reasons")).containsExactly("EXTINGUISHER_REQUIRED", "NO_EXTINGUISHER");
        bare.at("/reasons").forEach(reason -> assertThat(reason.at("/citation/basis").asString())
                .isEqualTo("COMMON_PRACTICE"));
        assertThat(bare.at("/tanks")).as("the cylinder beside it is no tank").hasSize(1);

        extinguisher(site, 20, "2026-10");
        assertThat(asked(site, ON).text("/outcome")).isEqualTo("NOT_MET");
        extinguisher(site, 40, "2025-11");
        var met = asked(site, ON);
        assertThat(met.text("/outcome")).as(met.body()).isEqualTo("MET");
        assertThat(met.text("/rule")).isEqualTo("us.site.extinguisher.required");
        assertThat(met.at("/ratingBCAtLeast").asInt()).isEqualTo(40);
        assertThat(met.text("/caution")).isEqualTo(Caution.TEXT);
        assertThat(met.text("/ruleBook/hash")).startsWith("sha256:");
        assertThat(met.at("/extinguishers").findValuesAsString("suffices")).containsExactly("NO", "YES");

        var december = asked(site, ON + "&asOf=2026-12-01");
        assertThat(december.text("/outcome")).as("its maintenance was due in November").isEqualTo("NOT_MET");
        assertThat(codes(december, "/extinguishers/1/reasons")).contains("EXTINGUISHER_OVERDUE");
    }

    /** Maintained in October 2026, so due in October 2027; its first emptying in May 2028, its first test in May 2034. */
    @Test
    void theClocksOfAnExtinguisherAreTold() {
        var site = siteWithTank("500 gal");
        extinguisher(site, 40, "2026-10");
        var answer = asked(site, "");
        Map<String, String> due = new HashMap<>();
        answer.at("/extinguishers/0/requirements").forEach(clock -> {
            due.put(clock.at("/requirement").asString(), clock.at("/due").asString());
            assertThat(clock.at("/citation/section").asString()).startsWith("1910.157");
            assertThat(clock.at("/citation/basis").asString()).isEqualTo("TEXT");
        });
        assertThat(due).isEqualTo(Map.of("EXTINGUISHER_INSPECTION", "2026-11", "EXTINGUISHER_MAINTENANCE", "2027-10",
                "EXTINGUISHER_EMPTYING", "2028-05", "EXTINGUISHER_PRESSURE_TEST", "2034-05"));
        assertThat(answer.text("/extinguishers/0/status")).isEqualTo("DUE_THIS_MONTH");
    }

    @Test
    void switchedOffItIsNeverSilentlyFine() {
        var site = siteWithTank("500 gal");
        extinguisher(site, 40, "2026-10");
        var off = asked(site, "");
        assertThat(off.text("/outcome")).isEqualTo("RULE_OFF");
        assertThat(codes(off, "/reasons")).containsExactly("RULE_OFF");
        assertThat(asked(site, "?enable=us.site.extinguisher.required").text("/outcome")).isEqualTo("MET");
    }

    @Test
    void beside100GallonsItIsRecommended() {
        assertThat(asked(siteWithTank("100 gal"), ON).text("/outcome")).isEqualTo("RECOMMENDED");
        assertThat(asked(given.site(null), ON).text("/outcome")).isEqualTo("NOT_REQUIRED");
    }

    @Test
    void whatIsNotKnownIsUndetermined() {
        var unmeasured = siteWithTank(null);
        extinguisher(unmeasured, 40, "2026-10");
        var answer = asked(unmeasured, ON);
        assertThat(answer.text("/outcome")).isEqualTo("UNDETERMINED");
        assertThat(codes(answer, "/reasons")).contains("MISSING_WATER_CAPACITY");

        var unrated = siteWithTank("500 gal");
        extinguisher(unrated, null, "2026-10");
        assertThat(asked(unrated, ON).text("/outcome")).isEqualTo("UNDETERMINED");

        var unrecorded = siteWithTank("500 gal");
        extinguisher(unrecorded, 40);
        var silent = asked(unrecorded, ON);
        assertThat(silent.text("/outcome")).isEqualTo("UNDETERMINED");
        assertThat(codes(silent, "/extinguishers/0/reasons")).contains("MISSING_REQUALIFICATIONS");
    }

    @Test
    void whatWasRemovedDoesNotCount() {
        var site = siteWithTank("500 gal");
        extinguisher(site, 40, "2026-10");
        var id = asked(site, ON).text("/extinguishers/0/id");
        yard.delete("/api/sites/" + site + "/extinguishers/" + id).expect(204);
        assertThat(asked(site, ON).text("/outcome")).isEqualTo("NOT_MET");
    }

    @ParameterizedTest
    @CsvSource({"?asOf=yesterday,asOf,WRONG_TYPE", "?asOf=1899-12-31,asOf,OUT_OF_RANGE",
            "?enable=EVERYTHING,enable,UNKNOWN_RULE"})
    void wrongQuestionsAreRefused(String query, String pointer, String code) {
        var refused = filler.get("/api/sites/" + given.site(null) + "/requirements" + query)
                .expectProblem(400, "INVALID_INPUT");
        assertThat(refused.errors()).isEqualTo(Map.of(pointer, code));
        assertThat(refused.text("/errors/0/accepted")).isNotBlank();
        assertThat(refused.text("/errors/0/found")).isEqualTo(query.substring(query.indexOf('=') + 1));
    }

    @Test
    void anUnknownSiteIsNotFound() {
        filler.get("/api/sites/00000000-0000-7000-8000-000000000000/requirements").expectProblem(404, "NOT_FOUND");
    }
}
