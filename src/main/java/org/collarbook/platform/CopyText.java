package org.collarbook.platform;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

import org.jspecify.annotations.Nullable;

/** PostgreSQL's text form of COPY in UTF-8: tab between columns, newline after a row, backslash before what would be either. */
final class CopyText {

    private byte[] bytes = new byte[1 << 16];
    private int length;

    byte[] bytes() {
        return bytes;
    }

    int length() {
        return length;
    }

    void clear() {
        length = 0;
    }

    void row(@Nullable Object[] row) {
        for (int i = 0; i < row.length; i++) {
            if (i > 0) {
                put('\t');
            }
            append(row[i]);
        }
        put('\n');
    }

    private void append(@Nullable Object value) {
        switch (value) {
            case null -> plain("\\N");
            case BigDecimal number -> plain(number.toPlainString());
            case String text -> escaped(text);
            case String[] texts -> escaped(array(texts));
            default -> escaped(value.toString());
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

    private void plain(String ascii) {
        for (int i = 0; i < ascii.length(); i++) {
            put(ascii.charAt(i));
        }
    }

    private void escaped(String text) {
        room(2 * text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c >= 0x80) {
                escapedUtf8(text.substring(i));
                return;
            }
            put(c, escape(c));
        }
    }

    /** Every byte of a longer sequence is above those that are escaped. */
    private void escapedUtf8(String text) {
        var encoded = text.getBytes(StandardCharsets.UTF_8);
        room(2 * encoded.length);
        for (byte each : encoded) {
            put((char) (each & 0xff), escape((char) (each & 0xff)));
        }
    }

    private void put(char c, char escape) {
        if (escape == 0) {
            bytes[length++] = (byte) c;
        } else {
            bytes[length++] = '\\';
            bytes[length++] = (byte) escape;
        }
    }

    private void put(char c) {
        room(1);
        bytes[length++] = (byte) c;
    }

    private void room(int more) {
        if (length + more > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(2 * bytes.length, length + more));
        }
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
