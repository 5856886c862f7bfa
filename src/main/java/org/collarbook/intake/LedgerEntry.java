package org.collarbook.intake;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteKind;
import org.collarbook.registry.Marks;
import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.Particulars;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/** One row that makes sense by itself; whether it fits the register is another question. */
record LedgerEntry(NaturalKey key, Marks marks, Particulars particulars, @Nullable Tag tag, @Nullable GivenSite site,
        List<LastTest> tests, @Nullable LocalDate filledOn, List<RowDeclaration> declared, Besides besides) {

    /** The same for two rows that say the same, however they spell it; of the words, since another service may go on. */
    int content() {
        return Arrays.asList(marks.kind(), value(marks.waterCapacity()), value(marks.tare()), marks.servicePressure(),
                particulars, tag, site, tests.stream().map(LastTest::done).toList(), filledOn, declared, besides)
                .toString().hashCode();
    }

    private static @Nullable Object value(@Nullable Stamped<?> mark) {
        return mark == null ? null : mark.value();
    }

    /** The site as the row has it; what is null was blank. */
    record GivenSite(String code, @Nullable String name, @Nullable SiteKind kind, @Nullable String customer,
            @Nullable String customerName, @Nullable Coordinates coordinates, @Nullable ZoneId zone,
            @Nullable Jurisdiction jurisdiction, @Nullable String address) {}

    /**
     * A test with the mark it was read from, and the day where that is told. {@code declared}: part of it rests on the
     * declaration of that number among the row's, the first being 1; or on the ledger's.
     */
    record LastTest(Requalification done, @Nullable LocalDate performedOn, @Nullable String asStamped, int declared) {

        static final int NOT_DECLARED = 0;
        static final int BY_LEDGER = -1;

        LastTest declaredBy(int number) {
            return new LastTest(done, performedOn, asStamped, number);
        }
    }
}
