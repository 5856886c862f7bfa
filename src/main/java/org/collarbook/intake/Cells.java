package org.collarbook.intake;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

/** The cells of one row by what they hold; what cannot be read is refused and counts as blank from there on. */
record Cells(LedgerRow row, Problems problems) {

    private static final Pattern DEGREES = Pattern.compile("[+-]?\\d{1,3}(\\.\\d{1,15})?");

    @Nullable
    String get(LedgerColumn column) {
        return row.get(column);
    }

    boolean isBlank(LedgerColumn column) {
        return row.get(column) == null;
    }

    void refuse(LedgerColumn column, String code, String accepted) {
        problems.refuse(column, code, row.get(column), accepted);
    }

    @Nullable
    String text(LedgerColumn column, int longest) {
        var text = row.get(column);
        if (text == null || text.length() <= longest && text.codePoints().noneMatch(Character::isISOControl)) {
            return text;
        }
        refuse(column, "INVALID_TEXT", "1 to " + longest + " printable characters");
        return null;
    }

    <E extends Enum<E>> @Nullable E word(LedgerColumn column, Class<E> words) {
        var text = row.get(column);
        var word = Constants.of(text, words);
        if (text != null && word == null) {
            refuse(column, "UNKNOWN_WORD", "one of " + Arrays.stream(words.getEnumConstants()).map(Enum::name)
                    .collect(Collectors.joining(", ")));
        }
        return word;
    }

    /** What the cell lists: nothing where it is blank, and where it is no list, which is refused. */
    List<ListItem> list(LedgerColumn column, String accepted) {
        var text = row.get(column);
        if (text == null) {
            return List.of();
        }
        var items = ListItem.read(text);
        if (items == null) {
            refuse(column, "INVALID_LIST", accepted);
            return List.of();
        }
        return items;
    }

    @Nullable
    Boolean yesOrNo(LedgerColumn column) {
        var text = row.get(column);
        return switch (text == null ? "" : text.toLowerCase(Locale.ROOT)) {
            case "" -> null;
            case "yes", "y", "true" -> true;
            case "no", "n", "false" -> false;
            default -> {
                refuse(column, "UNKNOWN_WORD", "yes or no; blank for not known");
                yield null;
            }
        };
    }

    @Nullable
    Double degrees(LedgerColumn column, int most) {
        var text = row.get(column);
        if (text == null) {
            return null;
        }
        if (DEGREES.matcher(text).matches() && new BigDecimal(text).abs().compareTo(BigDecimal.valueOf(most)) <= 0) {
            return Double.valueOf(text);
        }
        refuse(column, "INVALID_COORDINATE", "decimal degrees from -" + most + " to " + most);
        return null;
    }

    @Nullable
    LocalDate day(LedgerColumn column) {
        var text = row.get(column);
        try {
            return text == null ? null : WrittenTime.day(text);
        } catch (DateTimeParseException wrong) {
            refuse(column, "INVALID_DATE", "a day as YYYY-MM-DD; in which order day and month stand"
                    + " otherwise is told by a column map (dateFormat), never guessed");
            return null;
        }
    }
}
