package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/** A test that counts, as it goes into a ledger. */
record WrittenTest(Requalification done, @Nullable LocalDate day, @Nullable String stamp, @Nullable UUID declaration) {

    private static final Comparator<WrittenTest> LATEST_FIRST = Comparator
            .comparing((WrittenTest test) -> test.done.month()).thenComparing(test -> String.valueOf(test.day))
            .thenComparing(test -> String.valueOf(test.stamp)).reversed()
            .thenComparing(test -> String.valueOf(test.done)).thenComparing(test -> String.valueOf(test.declaration));

    /** Written by the statement. What the import would take for one test, as a merge may leave two, is one. */
    static List<WrittenTest> of(List<@Nullable String[]> rows) {
        var known = new HashSet<List<@Nullable Object>>();
        return rows.stream().map(WrittenTest::of).sorted(LATEST_FIRST)
                .filter(test -> known.add(Arrays.asList(test.done.month(), test.done.method(),
                        test.done.result(), test.done.rin(), test.day)))
                .toList();
    }

    private static WrittenTest of(@Nullable String[] row) {
        var method = row[1];
        var rin = row[4];
        return new WrittenTest(new Requalification(YearMonth.parse(Objects.requireNonNull(row[0])),
                method == null ? null : Method.valueOf(method), "true".equals(row[2]), "true".equals(row[3]),
                rin == null ? null : new Rin(rin), "true".equals(row[5]), Result.valueOf(String.valueOf(row[6]))),
                row[8] == null ? null : LocalDate.parse(row[8]), row[7],
                row[9] == null ? null : UUID.fromString(row[9]));
    }

    /** Nothing is known of it but what stands in a mark, or a month by itself. */
    boolean isPlain() {
        return day == null && declaration == null && !done.rinSeen() && done.result() == Result.PASSED;
    }
}
