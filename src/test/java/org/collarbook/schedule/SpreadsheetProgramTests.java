package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The workbook as LibreOffice Calc opens it, saved by it as CSV with what its cells show. */
@RegisterTest
class SpreadsheetProgramTests {

    /** Comma, quote, UTF-8, from the first line, cells as shown; the numbers of the filter's tokens are LibreOffice's. */
    private static final String CSV = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,true";

    private final Api api;
    private final Given given;

    SpreadsheetProgramTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    private static boolean isThere() {
        try {
            return new ProcessBuilder("soffice", "--version").redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD).start().waitFor() == 0;
        } catch (IOException notFound) {
            return false;
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    @Test
    void showsTheRowsOfThePlainFile(@TempDir Path folder) throws Exception {
        assumeTrue(isThere(), "NOT RUN: there is no soffice (apt-get install -y libreoffice-calc-nogui)");
        var site = given.site(given.customer());
        for (var tag : new String[]{"=1+1", "-5", "é \"quoted\", and more", "0017", "2027-03"}) {
            var body = Given.cylinder();
            body.put("manufactured", "2015-0" + (1 + tag.length() % 9));
            body.put("tag", tag + Given.serial());
            given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        }
        var plain = api.as(Role.CLERK).get("/api/schedule?format=csv&plain=true&site=" + site).expect(200).body();
        Files.write(folder.resolve("schedule.xlsx"),
                api.as(Role.CLERK).get("/api/schedule?format=xlsx&site=" + site).expect(200).bytes());
        var converted = new ProcessBuilder("soffice", "-env:UserInstallation=" + folder.resolve("profile").toUri(),
                "--headless", "--convert-to", CSV, "--outdir", folder.toString(), folder.resolve("schedule.xlsx")
                        .toString())
                .redirectErrorStream(true).redirectOutput(folder.resolve("log").toFile()).start();
        assertThat(converted.waitFor(10, TimeUnit.MINUTES)).isTrue();
        assertThat(folder.resolve("schedule.csv")).as(Files.readString(folder.resolve("log"))).exists();
        assertThat(cells(Files.readString(folder.resolve("schedule.csv")))).hasSize(6).isEqualTo(cells(plain));
    }

    private static List<List<String>> cells(String csv) throws IOException {
        return CSVFormat.RFC4180.parse(new StringReader(csv)).getRecords().stream().map(CSVRecord::toList)
                .toList();
    }
}
