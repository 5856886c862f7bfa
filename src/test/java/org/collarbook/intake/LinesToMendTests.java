package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.UUID;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The rows that were not taken come back as a ledger, which is mended and handed in again as it is. */
@RegisterTest
class LinesToMendTests {

    private final Api api;
    private final JdbcClient jdbc;
    private final JdbcClient owner;
    private final String serial = Given.serial();

    LinesToMendTests(Api api, JdbcClient jdbc, Flyway flyway) {
        this.api = api;
        this.jdbc = jdbc;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private String toMend(Answer checked) {
        var answer = api.as(Role.CLERK).with("Accept", "text/csv").get("/api/imports/" + checked.id() + "/lines")
                .expect(200);
        assertThat(answer.contentType()).startsWith("text/csv");
        assertThat(api.as(Role.CLERK).get(checked.text("/links/toMend")).expect(200).body()).isEqualTo(answer.body());
        return answer.body();
    }

    /** Read by the library alone, as another program would. */
    private static List<CSVRecord> read(String csv, char delimiter) {
        try (var parser = CSVFormat.RFC4180.builder().setDelimiter(delimiter).get().parse(new StringReader(csv))) {
            return parser.getRecords();
        } catch (IOException impossible) {
            throw new AssertionError(impossible);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void rowsComeBackAsTheyWereHandedInAndAreLoadedOnceMended(String delimiter) {
        var csv = """
                manufactured|Serial|specification|maker|owner
                5-04|%1$sA|DOT-4BA240|KVR|distributor
                13-04|%1$sB|DOT-4BA240|KVR|"two
                lines, a comma; and ""quotes"" "
                |%1$sA|DOT-4BA240|KVR|
                5-04|%1$sA|DOT-4BA240|KVR|Old Mill
                """.formatted(serial).replace("|", delimiter);
        var checked = Ledger.checked(api, csv, null);
        assertThat(Ledger.rows(checked)).isEqualTo("4/1/0/0/1/2");
        var mend = toMend(checked);
        var rows = read(mend, delimiter.charAt(0));
        assertThat(rows.getFirst().toList()).containsExactly("manufactured", "Serial", "specification", "maker",
                "owner", "problem_line", "problems");
        assertThat(rows).hasSize(4);
        assertThat(rows.get(1).toList().subList(0, 6)).containsExactly("13-04", serial + "B", "DOT-4BA240", "KVR",
                "two\nlines, a comma; and \"quotes\" ", "3");
        assertThat(rows.get(1).get(6)).startsWith("manufactured INVALID_MONTH: found 13-04; accepted ");
        assertThat(rows.get(2).get(6)).startsWith("manufactured MAY_BE_ANOTHER: ").contains("line 2");
        assertThat(rows.get(3).get(6)).startsWith("serial TWICE_IN_FILE: ");

        var again = Ledger.checked(api, mend, null);
        assertThat(Ledger.rows(again)).as("alone, the second and third say what is possible").isEqualTo("3/1/0/0/1/1");
        assertThat(read(toMend(again), delimiter.charAt(0)).getFirst().toList()).as("the columns are not added twice")
                .isEqualTo(rows.getFirst().toList());
        Ledger.committed(api, Ledger.checked(api, mend.replace("13-04", "12-04").replace("two\nlines",
                "two lines"), null), "SKIP");
        assertThat(owner("B")).isEqualTo("two lines, a comma; and \"quotes\"");
    }

    private String owner(String suffix) {
        return jdbc.sql("select owner from container where serial = ?").param(serial + suffix).query(String.class)
                .single();
    }

    /** OWASP, CSV injection: what a spreadsheet would run. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+Mill", "-Mill", "@Mill", "'=1+1", "'Mill", "-1", "a,\"b\"c", "=\"a\","})
    void textIsReadTheSameFromTheFileAndFromWhatIsToMend(String owner) {
        var plain = Ledger.committed(api, Ledger.checked(api, new Ledger().row("serial", serial + "P", "owner", owner)
                .csv(), null), "SKIP");
        assertThat(Ledger.rows(plain)).isEqualTo("1/1/0/0/0/0");
        var checked = Ledger.checked(api,
                new Ledger().row("serial", serial + "M", "owner", owner, "manufactured", "13-04")
                        .csv(),
                null);
        var mend = toMend(checked);
        var shown = read(mend, ',').get(1).get(7);
        assertThat(shown).isEqualTo("=+-@".indexOf(owner.charAt(0)) >= 0 && !owner.equals("-1") ? "'" + owner : owner);
        Ledger.committed(api, Ledger.checked(api, mend.replace("13-04", "12-04"), null), "SKIP");
        assertThat(owner("M")).isEqualTo(owner("P"));
    }

    @Test
    void aRowThatWasCutOffIsNoWholeRowAfterwards() {
        var checked = Ledger.checked(api, "specification,serial,owner\nDOT-4BA240," + serial + "\n", null);
        assertThat(Ledger.firstProblem(checked)).isEqualTo("2 specification WRONG_CELL_COUNT");
        assertThat(Ledger.firstProblem(Ledger.checked(api, toMend(checked), null)))
                .isEqualTo("2 specification WRONG_CELL_COUNT");
    }

    /** As when the database goes away in the middle: it is not ended as if it were whole. */
    @Test
    void whatBreaksOffDoesNotLookWhole() {
        var ledger = new Ledger();
        for (int i = 0; i < 12_000; i++) {
            ledger.row("manufactured", i < 900 || i > 11_990 ? "13-04" : "5-04", "owner",
                    "a long name, so that the file is of several pieces: " + "n".repeat(60));
        }
        var checked = Ledger.checked(api, ledger.csv(), null);
        assertThat(Ledger.rows(checked)).endsWith("/909/0");
        owner.sql("delete from ledger_import_file where import_id = ? and piece = 1")
                .param(UUID.fromString(checked.id())).update();
        var read = HttpRequest.newBuilder(URI.create(api.baseUrl() + checked.text("/links/toMend")))
                .header("Authorization", "Bearer " + api.keyOf(Role.CLERK)).build();
        assertThatThrownBy(() -> HttpClient.newHttpClient().send(read, HttpResponse.BodyHandlers.ofString()))
                .isInstanceOf(IOException.class);
    }

    @Test
    void moreThanAPageOfThemComesWhole() {
        var ledger = new Ledger();
        for (int i = 0; i < 1_200; i++) {
            ledger.row("serial", serial + "/" + i, "manufactured", i % 2 == 0 ? "13-04" : "5-04");
        }
        for (int i = 0; i < 1_100; i++) {
            ledger.row("manufactured", "13-04", "serial", serial + "//" + i);
        }
        var checked = Ledger.checked(api, ledger.csv(), null);
        assertThat(Ledger.rows(checked)).isEqualTo("2300/600/0/0/1700/0");
        assertThat(read(toMend(checked), ',')).hasSize(1_701);
        assertThat(read(api.as(Role.CLERK).get(checked.text("/links/toMend") + "&outcome=NEW").expect(200).body(), ','))
                .hasSize(601);
    }
}
