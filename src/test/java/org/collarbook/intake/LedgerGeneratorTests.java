package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;

/** A seeded ledger of some thousand rows with dirt in it: every line comes out with an outcome, and the right one. */
@RegisterTest
class LedgerGeneratorTests {

    private static final long SEED = 4711;

    private final Api api;

    LedgerGeneratorTests(Api api) {
        this.api = api;
    }

    private static String ledger(long seed) {
        try {
            var text = new StringBuilder();
            new LedgerGenerator(seed, TestClock.TODAY, 5_000, 0.05).writeTo(text);
            return text.toString();
        } catch (IOException impossible) {
            throw new AssertionError(impossible);
        }
    }

    @Test
    void theSameSeedWritesTheSameLedger() {
        assertEquals(ledger(SEED), ledger(SEED));
        assertNotEquals(ledger(SEED), ledger(SEED + 1));
    }

    @Test
    void everyLineIsAccountedFor() throws IOException {
        var written = new LedgerGenerator(SEED, TestClock.TODAY, 5_000, 0.05).writeTo(new StringBuilder());
        long clean = 5000 - written.spoiled();
        var kept = "/" + written.refused() + "/" + written.ambiguous();
        var csv = ledger(SEED);
        var checked = Ledger.checked(api, csv.getBytes(StandardCharsets.UTF_8), Ledger.declaration());
        assertEquals("5000/" + clean + "/0/0" + kept, Ledger.rows(checked), "seed " + SEED);
        var foretold = lines(checked);
        var committed = Ledger.committed(api, checked, "SKIP");
        assertEquals(Ledger.rows(checked), Ledger.rows(committed));
        assertEquals(foretold, lines(committed), "the commit did what the check said");
        var again = Ledger.checked(api, csv.getBytes(StandardCharsets.UTF_8), Ledger.declaration());
        assertEquals("5000/0/0/" + clean + kept, Ledger.rows(again));
    }

    /** Every line's outcome and first problem, read page by page. */
    private Map<Long, String> lines(Answer report) {
        var lines = new HashMap<Long, String>();
        Set<String> codes = new HashSet<>();
        String cursor = "";
        do {
            var page = api.as(Role.CLERK).get(report.text("/links/lines") + "?size=1000&cursor=" + cursor).expect(200);
            page.at("/items").forEach(line -> {
                lines.put(line.at("/line").asLong(), line.at("/outcome").asString() + " " + line.at("/problems"));
                codes.add(line.at("/problems/0/code").asString());
                assertEquals(Set.of("REFUSED", "AMBIGUOUS").contains(line.at("/outcome").asString()),
                        line.at("/problems").toString().contains("\"refuses\":true"), line.toString());
            });
            cursor = page.text("/next");
        } while (!cursor.isEmpty());
        assertEquals(5_000, lines.size());
        for (long line = 2; line <= 5_001; line++) {
            assertTrue(lines.containsKey(line), "line " + line);
        }
        assertTrue(codes.containsAll(Set.of("INVALID_MONTH", "UNKNOWN_SPECIFICATION", "MISSING", "INVALID_SERIAL",
                "INVALID_WATER_CAPACITY", "IN_THE_FUTURE", "TEST_BEFORE_MANUFACTURE", "SITE_CONTRADICTS",
                "UNKNOWN_WORD", "WRONG_CELL_COUNT", "DUPLICATE_IN_FILE", "TWICE_IN_FILE", "MAY_BE_ANOTHER",
                "TAG_IN_USE")), codes.toString());
        return lines;
    }
}
