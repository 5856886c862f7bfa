package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** A column map as it is told, kept and shown. What is null is told of nothing. */
record ColumnMapContent(@Nullable Map<String, @Nullable HeadingTold> columns,
        @Nullable Map<String, @Nullable String> fixed, @Nullable List<@Nullable String> ignored,
        @Nullable Map<String, @Nullable Map<String, @Nullable String>> words, @Nullable String dateFormat) {

    /** The column of the template that a heading stands for, and the unit of the numbers below it. */
    record HeadingTold(@Nullable String column, @Nullable String unit) {}

    /** All headings that it knows, those that it ignores included. */
    List<String> headings() {
        var headings = new ArrayList<String>();
        if (columns != null) {
            headings.addAll(columns.keySet());
        }
        if (ignored != null) {
            ignored.stream().filter(heading -> heading != null).forEach(headings::add);
        }
        return headings;
    }

    List<String> wordsOf(LedgerColumn column) {
        var all = new ArrayList<String>();
        if (words != null) {
            words.forEach((of, known) -> {
                if (LedgerColumn.of(of) == column && known != null) {
                    all.addAll(known.keySet());
                }
            });
        }
        return all;
    }
}
