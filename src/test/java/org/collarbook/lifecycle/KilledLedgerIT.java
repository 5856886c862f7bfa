package org.collarbook.lifecycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashSet;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import tools.jackson.databind.json.JsonMapper;

/**
 * The packaged jar, killed in the middle of the commit of a ledger: the next start goes on at the checkpoint by itself,
 * no row is lost and none is there twice.
 */
class KilledLedgerIT {

    private static final int ROWS = 60_000;
    /** Every so many rows one that says otherwise what an earlier one said. */
    private static final int ONE_AMBIGUOUS_IN = 600;
    private static final int AMBIGUOUS = ROWS / ONE_AMBIGUOUS_IN;
    private static final JsonMapper JSON = JsonMapper.builder().build();

    @TempDir
    private Path folder;
    private String key = "";

    private static String ledger() {
        var csv = new StringBuilder("specification,maker,serial,manufactured,tare\r\n");
        for (int i = 1; i <= ROWS; i++) {
            // the one of a row long before the checkpoint, so that the claim must have outlived the kill
            boolean again = i % ONE_AMBIGUOUS_IN == 0;
            csv.append("DOT-4BA240,KIL,N").append(again ? i / ONE_AMBIGUOUS_IN : i).append(",5-04,")
                    .append(again ? "19" : "17").append(" lb\r\n");
        }
        return csv.toString();
    }

    @Test
    void killedInTheMiddleOfACommit() throws Exception {
        String ledger;
        long before;
        try (var first = RunningJar.start(folder).awaitUp()) {
            key = first.printedKey().orElseThrow();
            ledger = SentLedger.handIn(first, key, ledger());
            var checked = SentLedger.until(first, key, ledger, SentLedger::isChecked);
            assertThat(checked.path("rows").path("new").asInt()).isEqualTo(ROWS - AMBIGUOUS);
            SentLedger.commit(first, key, ledger);
            SentLedger.until(first, key, ledger, report -> report.has("committedThroughLine"));
            first.kill();
        }
        try (var second = RunningJar.start(folder).awaitUp()) {
            var left = SentLedger.report(second, key, ledger);
            before = left.path("committedThroughLine").asLong();
            assertThat(left.path("state").asString()).as("over before it was killed").isEqualTo("COMMITTING");
            assertThat(before).isBetween(2L, (long) ROWS);
            var done = SentLedger.until(second, key, ledger,
                    report -> !report.path("state").asString().startsWith("COMMITTING"));
            assertThat(done.path("state").asString()).as(done.toString()).isEqualTo("COMMITTED");
            assertThat(done.path("progress").path("attempt").asInt()).isEqualTo(2);
            assertThat(done.path("rows")).isEqualTo(JSON.readTree("""
                    {"read":%d,"new":%d,"changed":0,"unchanged":0,"refused":0,"ambiguous":%d}"""
                    .formatted(ROWS, ROWS - AMBIGUOUS, AMBIGUOUS)));
            eachLineOnce(second, ledger);
            assertThat(second.get("/api/audit/verification?size=1000", key).body()).contains("\"whole\":true");

            var again = SentLedger.handIn(second, key, ledger());
            var same = SentLedger.until(second, key, again, SentLedger::isChecked);
            assertThat(same.path("rows").path("unchanged").asInt()).as("each container is registered")
                    .isEqualTo(ROWS - AMBIGUOUS);
            assertThat(same.path("rows").path("ambiguous").asInt()).isEqualTo(AMBIGUOUS);
        }
    }

    private void eachLineOnce(RunningJar service, String ledger) throws Exception {
        var lines = new HashSet<Long>();
        int told = 0;
        var cursor = "";
        do {
            var page = JSON.readTree(service.get(ledger + "/lines?size=1000&cursor=" + cursor, key).body());
            page.path("items").forEach(line -> lines.add(line.path("line").asLong()));
            told += page.path("items").size();
            cursor = page.path("next").asString("");
        } while (!cursor.isEmpty());
        assertThat(told).isEqualTo(ROWS);
        assertThat(lines).hasSize(ROWS);
    }
}
