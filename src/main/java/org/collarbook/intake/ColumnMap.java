package org.collarbook.intake;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.jspecify.annotations.Nullable;

/**
 * How the files of somebody else's making are read: which column each heading of theirs is, what all rows have in common,
 * what is left out on purpose, and what their words mean. Headings and words are compared whatever their case and spaces
 * ({@link KnownHeadings#folded}).
 */
record ColumnMap(String name, int version, Map<String, Mapped> columns, Map<LedgerColumn, String> fixed,
        Set<String> ignored, Map<LedgerColumn, Map<String, String>> words, @Nullable DayFormat dayFormat,
        ColumnMapContent content) {

    /** The column of the template, and the unit of its numbers where the heading tells it. */
    record Mapped(LedgerColumn column, @Nullable String unit) {}

    /** Their headings as they wrote them. */
    List<String> headings() {
        return content.headings();
    }

    /** The template's word for theirs; any other text as it is. */
    String word(LedgerColumn column, String cell) {
        var known = words.get(column);
        var word = known == null ? null : known.get(KnownHeadings.folded(cell));
        return word == null ? cell : word;
    }

    /** What else may stand in a column, to be told where something there is refused. */
    Map<LedgerColumn, String> alsoAccepted() {
        var also = new EnumMap<LedgerColumn, String>(LedgerColumn.class);
        words.forEach((column, known) -> also.put(column, "; or by the map " + name + ": "
                + String.join(", ", content.wordsOf(column))));
        if (dayFormat != null) {
            ColumnSorts.DAYS.forEach(column -> also.put(column, "; or by the map " + name + ": " + dayFormat));
        }
        return also;
    }
}
