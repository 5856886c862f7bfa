package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;

/**
 * Ledgers of several stored pieces, on a register of their own: the check must have seen what the commit will see, to the
 * last byte.
 */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-large-ledgers")
class LargeLedgerTests {

    private static final int ROWS = 14_000;

    private final Api api;

    LargeLedgerTests(Api api) {
        this.api = api;
    }

    private static String ledger() throws Exception {
        var out = new StringWriter();
        new LedgerGenerator(99, TestClock.TODAY, ROWS, 0.01).writeTo(out);
        return out.toString();
    }

    @Test
    void theCheckReadsTheFileToItsEndAndTheCommitDoesTheSame() throws Exception {
        var ledger = ledger();
        assertThat(ledger.length()).as("more than two pieces").isGreaterThan(2 << 20);
        var checked = Ledger.checked(api, ledger, Ledger.declaration());
        assertThat(checked.at("/rows/read").asInt()).isEqualTo(ROWS);
        var committed = Ledger.committed(api, checked, "SKIP");
        assertThat(committed.at("/rows")).isEqualTo(checked.at("/rows"));
    }

    @Test
    void aFaultFarIntoTheFileIsFoundByTheCheck() throws Exception {
        var ledger = ledger();
        var columns = ledger.lines().findFirst().orElseThrow().split(",").length;
        var broken = ledger + "\"never closed" + ",".repeat(columns - 1) + Given.serial() + "\n";
        Ledger.handIn(api, broken, Ledger.declaration()).expectProblem(400, "UNCLOSED_QUOTE");
        api.as(Role.CLERK).get("/api/customers?size=1").expect(200);
    }
}
