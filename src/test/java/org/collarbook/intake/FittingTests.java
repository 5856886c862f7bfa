package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** How rows fit to each other and to what the register has; each check is compared with its commit. */
@RegisterTest
class FittingTests {

    private final Api api;
    private final Tables tables;
    private final JdbcClient jdbc;

    FittingTests(Api api, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.tables = tables;
        this.jdbc = jdbc;
    }

    private String lines(Answer report) {
        return StreamSupport.stream(api.as(Role.CLERK).get(report.text("/links/lines")).expect(200).at("/items")
                .spliterator(), false).map(
                        line -> line.at("/outcome").asString() + line.at("/problems")
                                .findValuesAsString("code"))
                .collect(Collectors.joining(" "));
    }

    private String loaded(Ledger ledger) {
        var checked = Ledger.checked(api, ledger.csv(), Ledger.declaration());
        var foretold = lines(checked);
        assertEquals(foretold, lines(Ledger.committed(api, checked, "SKIP")));
        return foretold;
    }

    @Test
    void theLaterOfTwoRowsOfOneContainerIsRefusedNamingTheEarlierLine() {
        var serial = Given.serial();
        var ledger = new Ledger().row("serial", serial, "specification", "DOT-4BA240", "manufactured", "5-04")
                .row("serial", serial.toLowerCase(Locale.ROOT), "specification", "dot 4ba240",
                        "manufactured", "2004-05")
                .row("serial", serial, "maker", "TUL").row("serial", serial, "manufactured", "6-04");
        var checked = Ledger.checked(api, ledger.csv(), null);
        assertEquals("3 serial DUPLICATE_IN_FILE", Ledger.firstProblem(checked));
        assertTrue(checked.text("/problems/0/accepted").contains("line 2"), checked.body());
        assertEquals("4/3/0/0/1/0", Ledger.rows(checked));
    }

    @Test
    void duplicatesAndTagsAreFoundAcrossBatches() {
        var serial = Given.serial();
        var ledger = new Ledger().row("serial", serial, "tag", "T" + serial);
        for (int i = 0; i < LedgerPass.BATCH; i++) {
            ledger.row("serial", serial + "/" + i);
        }
        ledger.row("serial", serial).row("tag", "T" + serial);
        var checked = Ledger.checked(api, ledger.csv(), null);
        assertEquals("2003/2001/0/0/0/2", Ledger.rows(checked));
        assertEquals("2003 serial TWICE_IN_FILE", Ledger.firstProblem(checked));
        assertEquals("TAG_IN_USE", checked.text("/problems/1/code"));
        assertEquals("2003/2001/0/0/0/2", Ledger.rows(Ledger.committed(api, checked, "SKIP")));
    }

    @Test
    void aTagThatAnotherContainerHasLeavesOpenWhichIsMeant() {
        var one = Given.serial();
        var two = Given.serial();
        assertEquals("NEW[] NEW[]", loaded(new Ledger().row("serial", one, "tag", "T" + one).row("serial", two, "tag",
                "T" + two)));
        assertEquals("AMBIGUOUS[TAG_IN_USE] AMBIGUOUS[TAG_IN_USE]",
                loaded(new Ledger().row("tag", "T" + one).row("serial", two, "tag", "T" + one)));
        // a tag given up by one row is not free for the next: the check would tell another thing than the commit
        assertEquals("CHANGED[] AMBIGUOUS[TAG_IN_USE]", loaded(new Ledger().row("serial", one, "tag", "N" + one)
                .row("tag", "T" + one)));
        assertEquals("NEW[]", loaded(new Ledger().row("tag", "T" + one)));
    }

    @Test
    void aSiteIsOpenedOnceAndContradictionsAreRefused() {
        var code = "S" + Given.serial();
        assertEquals("REFUSED[MISSING] REFUSED[MISSING] REFUSED[CUSTOMER_NOT_ALLOWED]", loaded(new Ledger()
                .row("site", code).row("site", code, "site_kind", "CUSTOMER")
                .row("site", code, "site_kind", "DEPOT", "customer", "C")));
        assertEquals("NEW[] NEW[] REFUSED[SITE_CONTRADICTS] REFUSED[SITE_CONTRADICTS] NEW[SITE_KEPT] NEW[SITE_KEPT]",
                loaded(new Ledger()
                        .row("site", code, "site_kind", "CUSTOMER", "customer", "C" + code, "site_name", "Shed")
                        .row("site", code).row("site", code, "customer", "D" + code)
                        .row("site", code, "site_kind", "DEPOT").row("site", code, "site_name", "Barn")
                        .row("site", code, "latitude", "41", "longitude", "-99")));
        assertEquals(1, tables.count("site where code = '" + code + "' and name = 'Shed'"));
        assertEquals("C" + code, jdbc.sql("select name from customer where code = ?").param("C" + code)
                .query(String.class).single());
    }

    @Test
    void aSiteThatIsNotKnownNeedsTheZoneAndJurisdictionOfADeclaration() {
        var csv = new Ledger().row("site", "S" + Given.serial(), "site_kind", "DEPOT").csv();
        var bare = Ledger.checked(api, csv, null);
        assertEquals("REFUSED[SITE_NEEDS_ZONE, SITE_NEEDS_JURISDICTION]", lines(bare));
        var said = Ledger.declaration();
        said.remove("zone");
        assertEquals("REFUSED[SITE_NEEDS_ZONE]", lines(Ledger.checked(api, csv, said)));
    }

    @Test
    void aKindIsTakenFromTheSpecificationOnlyWhereThatLeavesNoChoice() {
        assertEquals("NEW[] REFUSED[MISSING] NEW[]", loaded(new Ledger().row("specification", "MC-331")
                .row("specification", "ASME", "water_capacity", "499 gal")
                .row("specification", "ASME", "kind", "stationary tank", "water_capacity", "499 gal")));
    }

    @Test
    void aLaterDeclarationTakesThePlaceOfAnEarlierWhereItAssertsAsMuch() {
        var serial = Given.serial();
        loaded(new Ledger().row("serial", serial));
        var less = Ledger.declaration();
        less.remove("coated");
        less.put("ownerConsent", true);
        assertEquals("UNCHANGED[DECLARATION_KEPT]",
                lines(Ledger.checked(api, new Ledger().row("serial", serial).csv(), less)));
        var more = Ledger.declaration();
        more.put("ownerConsent", true);
        new Ledger().row("serial", serial).load(api, more);
        assertEquals(1, tables.count("container where serial = '" + serial + "' and owner_consent and coated"
                + " and declared @> array['coated', 'owner_consent', 'corrosion_free']"));
        // what the collar itself says goes before what was declared
        new Ledger().row("serial", serial, "coated", "no").load(api, null);
        assertEquals(1, tables.count("container where serial = '" + serial + "' and not coated and not declared @>"
                + " array['coated'] and declared @> array['owner_consent']"));
    }
}
