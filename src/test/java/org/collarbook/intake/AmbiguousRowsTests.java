package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Rows that could mean more than one container: none is taken, and each check is compared with its commit. */
@RegisterTest
class AmbiguousRowsTests {

    private final Api api;
    private final JdbcClient jdbc;
    private final String serial = Given.serial();

    AmbiguousRowsTests(Api api, JdbcClient jdbc) {
        this.api = api;
        this.jdbc = jdbc;
    }

    private Ledger row(Ledger ledger, String maker, String manufactured) {
        return ledger.row("serial", serial, "maker", maker, "manufactured", manufactured);
    }

    private String loaded(Ledger ledger) {
        var checked = Ledger.checked(api, ledger.csv(), null);
        var foretold = lines(checked);
        assertThat(lines(Ledger.committed(api, checked, "SKIP"))).isEqualTo(foretold);
        return foretold;
    }

    private String lines(Answer report) {
        return api.as(Role.CLERK).get(report.text("/links/lines")).expect(200).at("/items").valueStream()
                .map(line -> line.at("/outcome").asString() + line.at("/problems").findValuesAsString("code"))
                .collect(Collectors.joining(" "));
    }

    private long registered() {
        return jdbc.sql("select count(*) from container where serial = ?").param(serial).query(Long.class).single();
    }

    @Test
    void aRowWithoutMakerOrMonthMayBeAnyThatIsAlikeInTheRest() {
        assertThat(loaded(row(row(new Ledger(), "KVR", "5-04"), "TUL", "6-04"))).isEqualTo("NEW[] NEW[]");
        assertThat(loaded(row(new Ledger(), "", "5-04"))).isEqualTo("AMBIGUOUS[MAY_BE_ANOTHER]");
        assertThat(loaded(row(new Ledger(), "TUL", ""))).isEqualTo("AMBIGUOUS[MAY_BE_ANOTHER]");
        assertThat(loaded(row(new Ledger(), "", ""))).isEqualTo("AMBIGUOUS[MAY_BE_ANOTHER]");
        // no container of July 2004 is alike, nor one of this maker
        assertThat(loaded(row(row(new Ledger(), "", "7-04"), "ZEF", ""))).isEqualTo(
                "NEW[] AMBIGUOUS[MAY_BE_ANOTHER]");
        assertThat(loaded(row(row(new Ledger(), "KVR", "5-04"), "TUL", "6-04")))
                .isEqualTo("UNCHANGED[] UNCHANGED[]");
        assertThat(registered()).isEqualTo(3);
    }

    /** Not taken, so no hold comes of it: whoever reads the report must know. */
    @Test
    void whatARowThatIsNotTakenSaysOfAHoldIsTold() {
        var twice = row(new Ledger(), "KVR", "5-04").row("serial", serial, "maker", "KVR", "manufactured", "5-04",
                "status", "condemned");
        assertThat(loaded(twice)).isEqualTo("NEW[] AMBIGUOUS[TWICE_IN_FILE, STATUS_NOT_TAKEN]");
        assertThat(loaded(new Ledger().row("serial", serial, "maker", "KVR", "manufactured", "13-04", "status",
                "leaking"))).isEqualTo("REFUSED[INVALID_MONTH, STATUS_NOT_TAKEN]");
        assertThat(loaded(new Ledger().row("serial", serial, "maker", "KVR", "manufactured", "13-04", "status",
                "in service"))).isEqualTo("REFUSED[INVALID_MONTH]");
    }

    @Test
    void aNoThatBecomesAYesIsTakenAndTold() {
        assertThat(loaded(new Ledger().row("serial", serial, "maker", "KVR", "manufactured", "5-04", "exclusive", "no",
                "marks_legible", "no"))).isEqualTo("NEW[]");
        assertThat(loaded(new Ledger().row("serial", serial, "maker", "KVR", "manufactured", "5-04", "exclusive", "yes",
                "marks_legible", "yes"))).isEqualTo("CHANGED[WAS_NO, WAS_NO]");
    }

    @Test
    void aWholeRowMayBeTheContainerWhoseMakerOrMonthNobodyRecorded() {
        assertThat(loaded(row(new Ledger(), "", ""))).isEqualTo("NEW[]");
        assertThat(loaded(row(new Ledger(), "KVR", "5-04"))).isEqualTo("AMBIGUOUS[MAY_BE_ANOTHER]");
        assertThat(loaded(row(new Ledger(), "", ""))).as("the only one that is alike").isEqualTo("UNCHANGED[]");
        var told = Ledger.checked(api, row(new Ledger(), "KVR", "5-04").csv(), null).text("/problems/0/accepted");
        assertThat(told).contains(jdbc.sql("select id from container where serial = ?").param(serial)
                .query(UUID.class).single().toString(), "left out there");
    }

    @Test
    void rowsOfOneFileAreAlikeAsContainersAre() {
        assertThat(loaded(row(row(row(new Ledger(), "", "5-04"), "KVR", "5-04"), "KVR", "6-04")))
                .as("what is not taken casts no doubt").isEqualTo("NEW[] AMBIGUOUS[MAY_BE_ANOTHER] NEW[]");
        assertThat(loaded(row(row(row(new Ledger(), "", "5-04"), "KVR", "5-04"), "KVR", "6-04")))
                .as("the same file again").isEqualTo("UNCHANGED[] AMBIGUOUS[MAY_BE_ANOTHER] UNCHANGED[]");
    }

    @Test
    void ofARowThatWasRefusedTheNextMayTakeThePlace() {
        var ledger = new Ledger().row("serial", serial, "site", "S" + serial).row("serial", serial);
        assertThat(loaded(ledger)).isEqualTo(
                "REFUSED[MISSING, SITE_NEEDS_ZONE, SITE_NEEDS_JURISDICTION] NEW[]");
    }

    @Test
    void theSameMarksTwiceAreARepeatOrSayOtherwise() {
        var ledger = new Ledger().row("serial", serial).row("serial", serial, "specification", "dot 4ba240",
                "manufactured", "2004-05").row("serial", serial, "tare", "18 lb");
        assertThat(loaded(ledger)).isEqualTo("NEW[] REFUSED[DUPLICATE_IN_FILE] AMBIGUOUS[TWICE_IN_FILE]");
    }

    @Test
    void whatCannotBeAcceptedGoesBeforeWhatIsNotCertain() {
        var checked = Ledger.checked(api, new Ledger().row("manufactured", "1912-01", "last_test_mark", "3-15E", "tare",
                "seventeen").csv(), null);
        assertThat(lines(checked)).startsWith("REFUSED[");
        assertThat(Ledger.rows(checked)).isEqualTo("1/0/0/0/1/0");
    }
}
