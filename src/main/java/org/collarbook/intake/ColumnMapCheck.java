package org.collarbook.intake;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Collection;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

import org.collarbook.intake.ColumnMap.Mapped;
import org.collarbook.intake.ColumnMapContent.HeadingTold;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

/** Reads a map as it was told, and says all that is wrong with it. */
final class ColumnMapCheck {

    private static final int LONGEST = 200;
    private static final int MOST = 1000;
    /** What is of one container only. */
    private static final Set<LedgerColumn> OF_ONE = EnumSet.of(LedgerColumn.SERIAL, LedgerColumn.TAG);

    private final Inputs inputs = new Inputs();
    private final ColumnMapContent told;
    private final Map<String, Mapped> columns = new LinkedHashMap<>();
    private final Set<String> ignored = new HashSet<>();
    private final Map<LedgerColumn, String> fixed = new EnumMap<>(LedgerColumn.class);
    private final Map<LedgerColumn, Map<String, String>> words = new EnumMap<>(LedgerColumn.class);

    private ColumnMapCheck(ColumnMapContent told) {
        this.told = told;
    }

    static ColumnMap of(String name, int version, ColumnMapContent told) {
        return new ColumnMapCheck(told).read(name, version);
    }

    private ColumnMap read(String name, int version) {
        if (told.columns() != null && isFew("/columns", told.columns().keySet())) {
            told.columns().forEach(this::heading);
        }
        if (told.ignored() != null && isFew("/ignored", told.ignored())) {
            for (int i = 0; i < told.ignored().size(); i++) {
                ignore("/ignored/" + i, told.ignored().get(i));
            }
        }
        if (told.fixed() != null) {
            told.fixed().forEach(this::fix);
        }
        if (told.words() != null) {
            told.words().forEach(this::words);
        }
        var format = told.dateFormat() == null ? null : DayFormat.of(told.dateFormat());
        if (told.dateFormat() != null && format == null) {
            inputs.refuse("/dateFormat", "INVALID_DATE_FORMAT", told.dateFormat(), DayFormat.ACCEPTED);
        }
        inputs.done();
        return new ColumnMap(name, version, columns, fixed, ignored, words, format, told);
    }

    private boolean isFew(String pointer, Collection<?> all) {
        if (all.size() > MOST) {
            inputs.refuse(pointer, "TOO_MANY", String.valueOf(all.size()), "at most " + MOST);
        }
        return all.size() <= MOST;
    }

    private void heading(String heading, @Nullable HeadingTold of) {
        var at = "/columns/" + escaped(heading);
        var text = inputs.required(at, heading, LONGEST);
        var column = column(at + "/column", of == null ? null : of.column());
        var unit = of == null ? null : of.unit();
        if (unit != null && column != null) {
            var units = Units.of(column);
            if (units == null) {
                inputs.refuse(at + "/unit", "NOT_FOR_THIS_COLUMN", unit, "a unit with water_capacity or tare only");
            } else if (!units.knows(unit)) {
                inputs.refuse(at + "/unit", "UNKNOWN_UNIT", unit, units.accepted());
            }
        }
        if (text != null && column != null
                && columns.put(KnownHeadings.folded(text), new Mapped(column, unit)) != null) {
            inputs.refuse(at, "TOLD_TWICE", heading, "each heading once; case and spaces do not count");
        }
    }

    private void ignore(String at, @Nullable String heading) {
        var text = inputs.required(at, heading, LONGEST);
        if (text != null && (columns.containsKey(KnownHeadings.folded(text))
                || !ignored.add(KnownHeadings.folded(text)))) {
            inputs.refuse(at, "TOLD_TWICE", heading, "each heading once, either read or ignored");
        }
    }

    private void fix(String word, @Nullable String value) {
        var at = "/fixed/" + escaped(word);
        var column = column(at, word);
        var text = inputs.required(at, value, LONGEST);
        if (column == null || text == null) {
            return;
        }
        if (OF_ONE.contains(column)) {
            inputs.refuse(at, "NOT_FOR_THIS_COLUMN", value, "nothing for all rows: it is of one container");
        } else if (columns.values().stream().anyMatch(mapped -> mapped.column() == column)) {
            inputs.refuse(at, "TOLD_TWICE", word, "a column that no heading stands for");
        } else if (isWord(at, TemplateWords.of(column), text) && isDay(at, column, text)) {
            fixed.put(column, text);
        }
    }

    private void words(String of, @Nullable Map<String, @Nullable String> known) {
        var at = "/words/" + escaped(of);
        var column = column(at, of);
        if (column == null || known == null || !isFew(at, known.keySet())) {
            return;
        }
        if (!ColumnSorts.WORDS.containsKey(column) && !ColumnSorts.ALSO_WORDS.contains(column)) {
            inputs.refuse(at, "NOT_FOR_THIS_COLUMN", of, "a column of words: what is stamped, counted or dated is"
                    + " read as it stands");
            return;
        }
        var own = TemplateWords.of(column);
        var read = new LinkedHashMap<String, String>();
        known.forEach((theirs, ours) -> {
            var pointer = at + "/" + escaped(theirs);
            var word = inputs.required(pointer, theirs, LONGEST);
            var text = inputs.required(pointer, ours, LONGEST);
            if (word == null || text == null || !isWord(pointer, own, text)) {
                return;
            }
            if (own.means().test(word) && !word.equalsIgnoreCase(text)) {
                inputs.refuse(pointer, "WORD_OF_THE_TEMPLATE", theirs, "a word that is not the template's own, which"
                        + " keeps its meaning");
            } else if (read.put(KnownHeadings.folded(word), text) != null) {
                inputs.refuse(pointer, "TOLD_TWICE", theirs, "each word once; case and spaces do not count");
            }
        });
        words.put(column, read);
    }

    private @Nullable LedgerColumn column(String at, @Nullable String word) {
        var column = word == null ? null : LedgerColumn.of(word);
        if (column == null) {
            inputs.refuse(at, word == null ? "MISSING" : "UNKNOWN_COLUMN", word, "one of "
                    + String.join(", ", LedgerColumn.words()));
        }
        return column;
    }

    private boolean isWord(String at, TemplateWords own, String text) {
        if (!own.admits().test(text)) {
            inputs.refuse(at, "UNKNOWN_WORD", text, own.accepted());
            return false;
        }
        return true;
    }

    private boolean isDay(String at, LedgerColumn column, String text) {
        try {
            return !ColumnSorts.DAYS.contains(column) || LocalDate.parse(text) != null;
        } catch (DateTimeParseException wrong) {
            inputs.refuse(at, "INVALID_DATE", text, "a day as YYYY-MM-DD");
            return false;
        }
    }

    /** As a JSON pointer has it (RFC 6901). */
    private static String escaped(String key) {
        return key.replace("~", "~0").replace("/", "~1");
    }
}
