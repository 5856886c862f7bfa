package org.collarbook.platform;

import java.math.BigDecimal;

import org.jspecify.annotations.Nullable;

/** PostgreSQL's text form of COPY: tab between columns, newline after a row, backslash before what would be either. */
final class CopyText {

    private CopyText() {}

    static void append(StringBuilder to, @Nullable Object[] row) {
        for (int i = 0; i < row.length; i++) {
            if (i > 0) {
                to.append('\t');
            }
            append(to, row[i]);
        }
        to.append('\n');
    }

    private static void append(StringBuilder to, @Nullable Object value) {
        switch (value) {
            case null -> to.append("\\N");
            case BigDecimal number -> to.append(number.toPlainString());
            case String text -> escaped(to, text);
            case String[] texts -> escaped(to, array(texts));
            default -> escaped(to, value.toString());
        }
    }

    private static String array(String[] texts) {
        var array = new StringBuilder("{");
        for (int i = 0; i < texts.length; i++) {
            array.append(i == 0 ? "\"" : ",\"").append(texts[i].replace("\\", "\\\\").replace("\"", "\\\""))
                    .append('"');
        }
        return array.append('}').toString();
    }

    private static void escaped(StringBuilder to, String text) {
        int plain = 0;
        for (int i = 0; i < text.length(); i++) {
            char escape = escape(text.charAt(i));
            if (escape != 0) {
                to.append(text, plain, i).append('\\').append(escape);
                plain = i + 1;
            }
        }
        to.append(text, plain, text.length());
    }

    /** What stands behind the backslash; 0 for a character that stands for itself. */
    private static char escape(char c) {
        return switch (c) {
            case '\\' -> '\\';
            case '\t' -> 't';
            case '\n' -> 'n';
            case '\r' -> 'r';
            default -> 0;
        };
    }
}
