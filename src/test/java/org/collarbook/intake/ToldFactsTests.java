package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What few rows of a ledger tell: how it is read, refused, and laid over what the register has. */
@RegisterTest
class ToldFactsTests {

    private final Api api;
    private final Tables tables;
    private final String serial = Given.serial();

    ToldFactsTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    private Answer loaded(String... cells) {
        var row = new ArrayList<>(List.of("serial", serial));
        row.addAll(List.of(cells));
        var checked = Ledger.checked(api, new Ledger().row(row.toArray(String[]::new)).csv(), null);
        var committed = Ledger.committed(api, checked, "ABORT");
        assertThat(Ledger.rows(committed)).isEqualTo(Ledger.rows(checked));
        return committed;
    }

    private static final String NEW = "1/1/0/0/0/0";
    private static final String CHANGED = "1/0/1/0/0/0";
    private static final String UNCHANGED = "1/0/0/1/0/0";

    private String container() {
        return api.as(Role.CLERK).get("/api/containers?serial=" + serial).expect(200).text("/items/0/id");
    }

    private Answer of(String what) {
        return api.as(Role.CLERK).get("/api/containers/" + container() + "/" + what).expect(200);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '~', maxCharsPerColumn = 1000, textBlock = """
            status ~ broken ~ UNKNOWN_WORD
            status ~ in service; dented ~ CONTRADICTS_STATUS
            status ~ dented since tomorrow ~ INVALID_DATE
            status ~ dented since 2026-12-24 ~ IN_THE_FUTURE
            status ~ dented since 2004-04-30 ~ BEFORE_MANUFACTURE
            status ~ dented | because it is ~ INVALID_LIST
            status ~ dented | note ~ INVALID_TEXT
            status ~ "dented ~ INVALID_LIST
            other_tests ~ 13-12E ~ INVALID_MARK
            other_tests ~ 2012-03 by eye ~ UNKNOWN_METHOD
            other_tests ~ 2012-13 external visual ~ INVALID_DATE
            other_tests ~ 2003-03 external visual ~ TEST_BEFORE_MANUFACTURE
            other_tests ~ 2027-03 external visual ~ IN_THE_FUTURE
            other_tests ~ 3-12E | RIN 12 ~ INVALID_RIN
            other_tests ~ 3-12E | declared 1 ~ UNKNOWN_DECLARATION
            other_tests ~ 3-12E | passed ~ INVALID_TEST
            other_tests ~ 3-12E | rejected | condemned ~ INVALID_TEST
            other_tests ~ 3/B045/12E | RIN B046 ~ CONTRADICTS_MARK
            other_tests ~ 3-12E | stamped 3-12E ~ INVALID_TEST
            collar_read ~ perhaps ~ UNKNOWN_WORD
            lined ~ perhaps ~ UNKNOWN_WORD
            steel ~ soft ~ UNKNOWN_WORD
            relief_valve ~ above ~ UNKNOWN_WORD
            parts ~ wheel | fitted 2020-01-05 ~ INVALID_PART
            parts ~ relief valve | fitted 2020-01-05 ~ INVALID_PART
            parts ~ gauge ~ INVALID_PART
            parts ~ gauge | fitted 2020-01-05; gauge | fitted 2020-01-05 ~ TOLD_TWICE
            parts ~ gauge | fitted 2020-01-05 | removed 2019-01-05 | reason worn ~ INVALID_PART
            parts ~ gauge | fitted 2020-01-05 | removed 2021-01-05 ~ INVALID_PART
            parts ~ exemption label | fitted 2020-01-05 ~ INVALID_PART
            parts ~ gauge | fitted 2020-01-05 | fitted 2021-01-05 ~ INVALID_LIST
            out_of_service ~ since 2020-01-05 | reason sold ~ NOT_FOR_THIS_KIND
            out_of_service_since ~ 2027-01-05 ~ IN_THE_FUTURE
            emptied_on ~ 2027-01-05 ~ IN_THE_FUTURE
            emptied_on ~ yesterday ~ INVALID_DATE
            permit_expires ~ 2300-01-01 ~ OUT_OF_RANGE
            permit_interval_years ~ 41 ~ OUT_OF_RANGE
            extended_period ~ long ~ UNKNOWN_WORD
            scheme_due ~ 5-28 ~ INVALID_MONTH
            owned ~ perhaps ~ UNKNOWN_WORD
            owner_consent ~ perhaps ~ UNKNOWN_WORD
            site_zone ~ Mars/North ~ UNKNOWN_ZONE
            site_jurisdiction ~ 1 ~ INVALID_JURISDICTION
            jurisdiction ~ 1 ~ INVALID_JURISDICTION
            jurisdiction ~ US ~ NOT_DECLARED
            declared_by ~ somebody ~ COUNTS_DIFFER
            declared ~ coated ~ MISSING
            """)
    void aWrongCellIsRefusedByLineAndColumn(String column, String cell, String code) {
        var checked = Ledger.checked(api, new Ledger().row().row("serial", serial, column, cell).csv(), null);
        assertThat(Ledger.rows(checked)).as(checked.body()).isEqualTo("2/1/0/0/1/0");
        var told = new ArrayList<String>();
        checked.at("/problems").forEach(problem -> told.add(problem.at("/line").asString() + " "
                + problem.at("/column").asString() + " " + problem.at("/code").asString()));
        assertThat(told).anyMatch(one -> one.startsWith("3 ") && one.endsWith(" " + code))
                .anyMatch(one -> one.equals("3 " + column + " " + code) || column.equals("declared"));
        assertThat(checked.at("/problems/0/accepted").asString()).isNotEmpty();
    }

    @Test
    void aStatusWordHoldsAndNoneLifts() {
        assertThat(Ledger.rows(loaded("status", "Leaking since 2026-03-02 | note at the valve; VALVE_DEFECT")))
                .isEqualTo(NEW);
        var holds = of("holds");
        assertThat(holds.at("/items")).hasSize(2);
        assertThat(holds.at("/items").findValuesAsString("reason")).containsExactlyInAnyOrder("LEAKING",
                "VALVE_DEFECT");
        assertThat(holds.at("/items").findValuesAsString("ledger")).hasSize(2).allMatch(id -> !id.isEmpty());
        assertThat(of("assessment").text("/status")).isEqualTo("ON_HOLD");
        assertThat(Ledger.rows(loaded("status", "leaking"))).isEqualTo(UNCHANGED);
        var inService = loaded("status", "in service");
        assertThat(Ledger.rows(inService)).isEqualTo(UNCHANGED);
        assertThat(Ledger.firstProblem(inService)).isEqualTo("2 status HOLD_STAYS");
        assertThat(Ledger.rows(loaded("status", "dented"))).isEqualTo(CHANGED);
        assertThat(of("holds").at("/items")).hasSize(3);
        assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + container()).expect(200)
                .at("/whole").asBoolean()).isTrue();
    }

    @Test
    void whatIsOutOfServiceForGoodStaysSo() {
        loaded("status", "condemned since 2026-03");
        assertThat(of("assessment").text("/status")).isEqualTo("CONDEMNED");
        assertThat(Ledger.rows(loaded("status", "condemned"))).isEqualTo(UNCHANGED);
        assertThat(Ledger.firstProblem(loaded("status", "in service"))).isEqualTo("2 status HOLD_STAYS");
        loaded("other_tests", "10-26E | RIN B045");
        assertThat(of("assessment").text("/status")).isEqualTo("CONDEMNED");
    }

    /** NFPA 58 Annex C.3.2.2: aluminum cylinders that were in a fire are permanently removed from service. */
    @Test
    void aluminiumThatWasInAFireIsCondemned() {
        loaded("specification", "DOT-4E240", "status", "fire or overheated since 2026-03-02");
        assertThat(of("assessment").text("/status")).isEqualTo("CONDEMNED");
    }

    /** By a test of the whole, since nobody tells which one it failed: 49 CFR 180.203. */
    @Test
    void aRejectionStandsUntilItIsAnswered() {
        loaded("status", "rejected since 2026-03-02");
        assertThat(of("assessment").text("/status")).isEqualTo("REJECTED");
        assertThat(Ledger.rows(loaded("status", "rejected"))).isEqualTo(UNCHANGED);
        loaded("last_test_mark", "10-26E", "rin", "B045");
        assertThat(of("assessment").text("/status")).isEqualTo("REJECTED");
        loaded("other_tests", "2026-10 proof pressure | RIN B045");
        assertThat(of("assessment").text("/status")).isNotEqualTo("REJECTED");
        assertThat(Ledger.rows(loaded("status", "rejected"))).isEqualTo(CHANGED);
        assertThat(of("assessment").text("/status")).isEqualTo("REJECTED");
    }

    @Test
    void aRejectionOfTheMonthOfAKnownTestIsNotLost() {
        loaded("last_test_mark", "10-26E", "rin", "B045");
        assertThat(Ledger.rows(loaded("other_tests", "2026-10 external visual | RIN B045 | rejected")))
                .isEqualTo(CHANGED);
        assertThat(of("assessment").text("/status")).isEqualTo("REJECTED");
    }

    @Test
    void aStopThatStandsIsNotEndedByALedger() {
        var tank = new String[]{"specification", "ASME", "kind", "STATIONARY_TANK", "water_capacity", "499 gal", "tare",
                "", "out_of_service", "since 2026-01-05 | reason sold"};
        loaded(tank);
        assertThat(of("assessment").text("/status")).isEqualTo("ON_HOLD");
        tank[9] = "2026-01-05 to 2026-05-01 | reason sold";
        var ended = loaded(tank);
        assertThat(Ledger.rows(ended)).isEqualTo(UNCHANGED);
        assertThat(Ledger.firstProblem(ended)).isEqualTo("2 out_of_service HOLD_STAYS");
        assertThat(of("assessment").text("/status")).isEqualTo("ON_HOLD");
    }

    @Test
    void aDeclarationThatWasWithdrawnDoesNotComeBack() {
        var maker = "W" + UUID.randomUUID().toString().substring(0, 8).toUpperCase(Locale.ROOT);
        loaded("maker", maker);
        var said = Map.of("declaredBy", "the plant manager", "declaredOn", "2026-11-20", "statement", "Seen: " + serial,
                "facts", Map.of("coated", true), "group", Map.of("maker", maker));
        var id = api.as(Role.CLERK).with("Idempotency-Key", serial).post("/api/declarations", said)
                .text("/declaration/id");
        var row = new String[]{"maker", maker, "coated", "yes", "declared", "coated", "declared_by",
                "the plant manager", "declared_on", "2026-11-20", "declared_statement", "Seen: " + serial};
        assertThat(Ledger.rows(loaded(row))).isEqualTo(UNCHANGED);
        api.as(Role.CLERK).with("Idempotency-Key", serial + "w").post("/api/declarations/" + id + "/withdrawal",
                Map.of("reason", "another yard"));
        var again = loaded(row);
        assertThat(Ledger.rows(again)).isEqualTo(UNCHANGED);
        assertThat(Ledger.firstProblem(again)).isEqualTo("2 declared_by DECLARATION_WITHDRAWN");
        assertThat(tables.count("container where serial = '" + serial + "' and coated is null")).isEqualTo(1);
    }

    @Test
    void aFactOnSomebodysWordStaysThat() {
        loaded("owner", "", "owner_consent", "yes", "declared", "owner_consent", "declared_by", "the clerk",
                "declared_on", "2026-11-20");
        assertThat(of("assessment").at("/declared/0").toString()).contains("the clerk", "owner_consent");
        // what was read goes before what was declared
        assertThat(Ledger.rows(loaded("owner", "", "owner_consent", "no"))).isEqualTo(CHANGED);
        assertThat(of("assessment").at("/declared")).isEmpty();
        assertThat(Ledger.firstProblem(loaded("owner", "", "owner_consent", "yes", "declared", "owner_consent",
                "declared_by", "the clerk", "declared_on", "2026-11-20"))).isEqualTo("2 declared DECLARATION_KEPT");
    }

    @ParameterizedTest
    @CsvSource({"2004-04-30, true", "2004-05-01, false"})
    void aRowsDeclarationSaysNothingOfWhatWasMadeAfterItsDay(String on, boolean before) {
        var row = new String[]{"coated", "yes", "other_tests", "2022-05 external visual | declared 1", "declared",
                "coated, tests", "declared_by", "the clerk", "declared_on", on};
        var loaded = loaded(row);
        assertThat(Ledger.rows(loaded)).isEqualTo(NEW);
        if (before) {
            assertThat(Ledger.firstProblem(loaded)).isEqualTo("2 declared_on DECLARED_BEFORE_MANUFACTURE");
        }
        assertThat(tables.count("container where serial = '" + serial + "' and coated is null")).isEqualTo(
                before ? 1 : 0);
        assertThat(of("requalifications").at("/items").size()).isEqualTo(before ? 0 : 1);
        assertThat(Ledger.rows(loaded(row))).isEqualTo(UNCHANGED);
    }

    @Test
    void nobodyDeclaredAnythingBefore1900() {
        var checked = Ledger.checked(api, new Ledger().row("manufactured", "", "coated", "yes", "declared", "coated",
                "declared_by", "the clerk", "declared_on", "1899-12-31").csv(), null);
        assertThat(Ledger.firstProblem(checked)).isEqualTo("2 declared_on OUT_OF_RANGE");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '~', textBlock = """
            coated ~ no ~ yes ~ coated WAS_NO
            lined ~ no ~ yes ~ lined WAS_NO
            exclusive ~ no ~ yes ~ exclusive WAS_NO
            corrosion_free ~ no ~ yes ~ corrosion_free WAS_NO
            marks_legible ~ no ~ yes ~ marks_legible WAS_NO
            owner ~ Old Mill ~ distributor ~ owner WAS_NO
            owned ~ no ~ yes ~ owner WAS_NO
            owner_consent ~ no ~ yes ~ owner_consent WAS_NO
            lading ~ OXYGEN ~ LPG ~ lading WAS_NO
            lading ~ LPG ~ PROPANE ~ ''
            extended_period ~ NONE ~ P15Y ~ extended_period WAS_NO
            extended_period ~ P15Y ~ COP31 ~ extended_period WAS_OTHERWISE
            extended_period ~ P15Y ~ NONE ~ ''
            steel ~ QT ~ NQT ~ steel WAS_OTHERWISE
            use ~ FUEL ~ INDUSTRIAL_TRUCK ~ use WAS_OTHERWISE
            installation ~ UNDERGROUND ~ ABOVEGROUND ~ installation WAS_OTHERWISE
            relief_valve ~ EXTERNAL ~ INTERNAL ~ relief_valve WAS_OTHERWISE
            permit_number ~ 1 ~ 2 ~ permit_number WAS_OTHERWISE
            permit_expires ~ 2027-01-01 ~ 2028-01-01 ~ permit_expires WAS_OTHERWISE
            permit_expires ~ 2028-01-01 ~ 2027-01-01 ~ ''
            permit_interval_years ~ 5 ~ 10 ~ permit_interval_years WAS_OTHERWISE
            scheme_due ~ 2027-01 ~ 2027-02 ~ scheme_due WAS_OTHERWISE
            out_of_service_since ~ 2020-01-05 ~ 2021-01-05 ~ out_of_service_since WAS_OTHERWISE
            water_capacity ~ 47.6 lb ~ 476 lb ~ water_capacity CAPACITY_GREW
            water_capacity ~ 47.6 lb ~ 22 kg ~ water_capacity CAPACITY_GREW
            water_capacity ~ 47.6 lb ~ 47.5 lb ~ ''
            tare ~ 17.0 lb ~ 27.0 lb ~ tare TARE_DIFFERS
            tare ~ 17.0 lb ~ 16.0 lb ~ tare TARE_DIFFERS
            service_pressure ~ 200 ~ 240 ~ service_pressure PRESSURE_GREW
            service_pressure ~ 240 ~ 200 ~ ''
            coated ~ yes ~ no ~ ''
            coated ~ '' ~ yes ~ ''
            """)
    void whatMayAllowMoreThanBeforeIsTold(String column, String had, String given, String told) {
        var owner = column.startsWith("own") ? "" : "distributor";
        loaded("owner", owner, column, had);
        var changed = loaded("owner", owner, column, given);
        assertThat(Ledger.rows(changed)).isEqualTo(CHANGED);
        var remarks = new ArrayList<String>();
        changed.at("/problems").forEach(one -> remarks.add(one.at("/column").asString() + " "
                + one.at("/code").asString()));
        assertThat(remarks).isEqualTo(told.isEmpty() ? List.of() : List.of(told));
        assertThat(Ledger.firstProblem(loaded("owner", owner, column, given))).isEqualTo("  ");
    }

    /** What stands on a declaration is a no as well, whether a row or another declaration says otherwise. */
    @Test
    void aDeclaredNoThatBecomesAYesIsTold() {
        var said = Ledger.declaration();
        said.put("coated", false);
        new Ledger().row("serial", serial).load(api, said);
        said.put("coated", true);
        assertThat(Ledger.firstProblem(new Ledger().row("serial", serial).load(api, said)))
                .isEqualTo("2 coated WAS_NO");
    }

    @Test
    void aKindThatIsAnotherIsTold() {
        loaded("specification", "ASME", "kind", "STATIONARY_TANK", "water_capacity", "499 gal", "tare", "");
        assertThat(Ledger.firstProblem(loaded("specification", "ASME", "kind", "CARGO_TANK", "water_capacity",
                "499 gal", "tare", ""))).isEqualTo("2 kind WAS_OTHERWISE");
    }

    /** As stamped in Canada, and read so off a collar; a ledger writes it so that it is read back. */
    @Test
    void aTareStampedWithACommaGoesRound() {
        var body = Given.cylinder();
        body.put("serial", serial);
        body.put("tare", "T 7,8 KG");
        api.as(Role.CLERK).with("Idempotency-Key", serial).post("/api/containers", body).expect(201);
        var all = api.as(Role.CLERK).get("/api/ledger").expect(200).body().lines().toList();
        var written = all.getFirst() + "\n" + all.stream().filter(line -> line.contains(serial)).findFirst()
                .orElseThrow() + "\n";
        assertThat(written).contains("17.196 lb").doesNotContain("7,8");
        assertThat(Ledger.rows(Ledger.checked(api, written, null))).isEqualTo(UNCHANGED);
    }

    @Test
    void aCommaIsRefusedWithTheWayOut() {
        var checked = Ledger.checked(api, new Ledger().row("tare", "17,2 lb").csv(), null);
        assertThat(checked.text("/problems/0/accepted")).contains("17.2 lb");
    }

    /** Two ledgers with the same containers, both checked before one of them is stored. */
    @ParameterizedTest
    @CsvSource({"SKIP", "ABORT"})
    void whatCameBetweenCheckAndCommitIsTold(String refused) {
        var first = new Ledger();
        var second = new Ledger();
        for (var one : List.of("a", "b", "c", "d")) {
            first.row("serial", serial + one, "tare", one.equals("c") ? "18 lb" : "17 lb");
            second.row("serial", serial + one, "tare", one.equals("b") ? "17 lb" : "18 lb");
        }
        new Ledger().row("serial", serial + "d", "tare", "18 lb").load(api, null);
        var checked = Ledger.checked(api, second.csv(), null);
        assertThat(Ledger.rows(checked)).isEqualTo("4/3/0/1/0/0");
        first.load(api, null);
        var committed = Ledger.committed(api, checked, refused);
        assertThat(Ledger.rows(committed)).isEqualTo("4/0/2/2/0/0");
        var told = new ArrayList<String>();
        committed.at("/problems").forEach(one -> told.add(one.at("/line").asString() + one.at("/code").asString()
                + one.at("/found").asString()));
        assertThat(told).contains("2CHANGED_SINCE_CHECKNEW", "5CHANGED_SINCE_CHECKUNCHANGED")
                .noneMatch(one -> one.startsWith("3") || one.startsWith("4"));
    }
}
