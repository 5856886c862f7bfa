package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;

/**
 * An import works set by set: how many statements it takes depends on the batches, not on the rows in them. In a register
 * where nothing is recalled and nobody is told of changes: a batch asks more where others' tests have left such.
 */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-large-ledgers")
class StatementCountTests {

    private static final long MOST_FOR_A_BATCH = 36;

    private final Api api;

    StatementCountTests(Api api) {
        this.api = api;
    }

    private String ledger(String serial, int rows) {
        var ledger = new Ledger();
        for (int i = 0; i < rows; i++) {
            ledger.row("serial", serial + "/" + i, "tag", serial + "-" + i, "last_test_mark", "5-16E", "filled_on",
                    "2021-05-20", "site", serial + i % 50, "site_kind", "CUSTOMER", "customer", serial + i % 50 / 2,
                    "emptied_on", "2022-05-20", "status", "dented", "other_tests", "5-11E", "parts",
                    "service valve | fitted 2020-05-01", "owner_consent", "yes", "declared", "owner_consent",
                    "declared_by", "clerk " + i % 3, "declared_on", "2026-11-20");
        }
        return ledger.csv();
    }

    private record Taken(long check, long commit) {}

    private Taken load(String csv, String rows) {
        Answer checked;
        long check;
        try (var sent = SentStatements.byTheJob()) {
            checked = Ledger.checked(api, csv, Ledger.declaration());
            check = sent.count();
        }
        assertEquals(rows, Ledger.rows(checked));
        try (var sent = SentStatements.byTheJob()) {
            assertEquals(rows, Ledger.rows(Ledger.committed(api, checked, "ABORT")));
            return new Taken(check, sent.count());
        }
    }

    @Test
    void threeBatchesTakeAFewStatementsMoreThanOne() {
        var serial = Given.serial();
        load(ledger(Given.serial(), 10), "10/10/0/0/0/0");
        var one = load(ledger(serial, 100), "100/100/0/0/0/0");
        var three = load(ledger(serial + "x", 2 * LedgerPass.BATCH + 100), "4100/4100/0/0/0/0");
        assertTrue(one.check > 10 && one.commit > 20, "the driver's log is read: " + one);
        assertTrue(three.check - one.check <= 2 * MOST_FOR_A_BATCH, one + " " + three);
        assertTrue(three.commit - one.commit <= 2 * MOST_FOR_A_BATCH, one + " " + three);
        var again = load(ledger(serial + "x", 2 * LedgerPass.BATCH + 100), "4100/0/0/4100/0/0");
        assertTrue(again.commit - one.commit <= 2 * MOST_FOR_A_BATCH, one + " " + again);
        System.out.println(
                "statements of one batch " + one + ", of three " + three + ", of three that are known " + again);
    }
}
