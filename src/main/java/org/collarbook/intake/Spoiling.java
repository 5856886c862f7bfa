package org.collarbook.intake;

import java.time.LocalDate;
import java.util.Map;

/** What makes a line of the invented ledger one that is not taken, each as met in ledgers kept by hand. */
enum Spoiling {

    MONTH_THIRTEEN,
    UNKNOWN_SPECIFICATION,
    SERIAL_MISSING,
    SERIAL_TOO_LONG,
    CAPACITY_WITHOUT_UNIT,
    CAPACITY_NEGATIVE,
    MADE_IN_THE_FUTURE,
    TESTED_BEFORE_IT_WAS_MADE,
    DEPOT_WITH_A_CUSTOMER,
    MISSPELT_USE,
    CUT_OFF,
    WRITTEN_TWICE,
    TWICE_AND_OTHERWISE(Line.Outcome.AMBIGUOUS),
    MAKER_LEFT_OUT(Line.Outcome.AMBIGUOUS),
    TAG_OF_ANOTHER(Line.Outcome.AMBIGUOUS);

    private final Line.Outcome outcome;

    Spoiling() {
        this(Line.Outcome.REFUSED);
    }

    Spoiling(Line.Outcome outcome) {
        this.outcome = outcome;
    }

    /** What becomes of such a row. */
    Line.Outcome outcome() {
        return outcome;
    }

    /** Whether what is spoiled is a copy of an earlier row. */
    boolean isOfEarlier() {
        return this == WRITTEN_TWICE || this == TWICE_AND_OTHERWISE || this == MAKER_LEFT_OUT;
    }

    /** Changes the cells so that the row is not taken; {@code earlier} is a row before it that is. */
    void spoil(Map<LedgerColumn, String> cells, Map<LedgerColumn, String> earlier, LocalDate asOf) {
        switch (this) {
            case MONTH_THIRTEEN -> cells.put(LedgerColumn.MANUFACTURED, "13-04");
            case UNKNOWN_SPECIFICATION -> cells.put(LedgerColumn.SPECIFICATION, "DOT-4XX240");
            case SERIAL_MISSING -> cells.put(LedgerColumn.SERIAL, "");
            case SERIAL_TOO_LONG -> cells.put(LedgerColumn.SERIAL, "SEE NOTE: " + "ILLEGIBLE UNDER PAINT ".repeat(3));
            case CAPACITY_WITHOUT_UNIT -> cells.put(LedgerColumn.WATER_CAPACITY, "47.6");
            case CAPACITY_NEGATIVE -> cells.put(LedgerColumn.WATER_CAPACITY, "-47.6 lb");
            case MADE_IN_THE_FUTURE -> cells.put(LedgerColumn.MANUFACTURED, asOf.getYear() + 2 + "-05");
            case TESTED_BEFORE_IT_WAS_MADE -> {
                cells.put(LedgerColumn.MANUFACTURED, "2010-06");
                cells.put(LedgerColumn.LAST_TEST_MARK, "3-2005");
            }
            case DEPOT_WITH_A_CUSTOMER -> {
                cells.put(LedgerColumn.SITE, "D-01");
                cells.put(LedgerColumn.SITE_KIND, "DEPOT");
                cells.put(LedgerColumn.CUSTOMER, "C-001");
            }
            case MISSPELT_USE -> cells.put(LedgerColumn.USE, "FORKLFT");
            case TWICE_AND_OTHERWISE -> cells.put(LedgerColumn.TARE, "99.9 lb");
            case MAKER_LEFT_OUT -> cells.put(LedgerColumn.MAKER, "");
            case TAG_OF_ANOTHER -> cells.put(LedgerColumn.TAG, earlier.getOrDefault(LedgerColumn.TAG, ""));
            case CUT_OFF, WRITTEN_TWICE -> {
                // cut where the line is written; a copy is enough
            }
        }
    }
}
