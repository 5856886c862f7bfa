package org.collarbook.intake;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteKind;
import org.collarbook.registry.Marks;
import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.Particulars;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/** One row that makes sense by itself; whether it fits the register is another question. */
record LedgerEntry(NaturalKey key, Marks marks, Particulars particulars, @Nullable Tag tag, @Nullable GivenSite site,
        List<LastTest> lastTests, @Nullable LocalDate filledOn) {

    /** The same for two rows that say the same, however they spell it; within one run of the service. */
    int content() {
        return Objects.hash(marks.kind(), value(marks.waterCapacity()), value(marks.tare()), marks.servicePressure(),
                particulars, tag, site, lastTests.stream().map(LastTest::done).toList(), filledOn);
    }

    private static @Nullable Object value(@Nullable Stamped<?> mark) {
        return mark == null ? null : mark.value();
    }

    /** The site as the row has it; what is null was blank. */
    record GivenSite(String code, @Nullable String name, @Nullable SiteKind kind, @Nullable String customer,
            @Nullable String customerName, @Nullable Coordinates coordinates) {}

    /** A test of the last mark, that mark, and whether part of it rests on the declaration. */
    record LastTest(Requalification done, @Nullable String asStamped, boolean declared) {}
}
