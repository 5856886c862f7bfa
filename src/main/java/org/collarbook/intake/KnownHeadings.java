package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

import org.collarbook.intake.ColumnMap.Mapped;
import org.jspecify.annotations.Nullable;

/** What a header may say: the words of the template, and what a map says of the file's own. */
record KnownHeadings(@Nullable ColumnMap map) {

    private static final Pattern SPACES = Pattern.compile("\\s+");

    /** As headings are compared: whatever their case and spaces. */
    static String folded(String heading) {
        return SPACES.matcher(heading.strip()).replaceAll(" ").toLowerCase(Locale.ROOT);
    }

    boolean isIgnored(String heading) {
        return map != null && map.ignored().contains(folded(heading));
    }

    /** What stands under the heading; null where nobody said. */
    @Nullable
    Mapped of(String heading) {
        var mapped = map == null ? null : map.columns().get(folded(heading));
        if (mapped != null) {
            return mapped;
        }
        var column = LedgerColumn.of(heading);
        return column == null ? null : new Mapped(column, null);
    }

    boolean knows(String heading) {
        return isIgnored(heading) || of(heading) != null;
    }

    boolean isFixed(LedgerColumn column) {
        return map != null && map.fixed().containsKey(column);
    }

    /** All of them, for who is to mend a header. */
    List<String> words() {
        var words = new ArrayList<>(LedgerColumn.words());
        if (map != null) {
            words.addAll(map.headings());
        }
        return words;
    }
}
