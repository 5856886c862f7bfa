package org.collarbook.regulation.rulebook;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** One text for one content: JSON with sorted keys and every scalar a string, which the YAML reader reads back. */
final class Canonical {

    private Canonical() {}

    static String text(Map<String, Map<?, ?>> files) {
        StringBuilder out = new StringBuilder();
        write(files, out);
        return out.toString();
    }

    static String hash(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return "sha256:" + HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException("every Java platform has SHA-256", impossible);
        }
    }

    private static void write(Object value, StringBuilder out) {
        if (value instanceof Map<?, ?> map) {
            TreeMap<String, Object> sorted = new TreeMap<>();
            map.forEach((key, item) -> sorted.put(String.valueOf(key), item == null ? "" : item));
            String separator = "{";
            for (Map.Entry<String, Object> entry : sorted.entrySet()) {
                out.append(separator);
                quote(entry.getKey(), out);
                out.append(':');
                write(entry.getValue(), out);
                separator = ",\n";
            }
            out.append(sorted.isEmpty() ? "{}" : "}");
        } else if (value instanceof List<?> list) {
            out.append('[');
            for (Iterator<?> items = list.iterator(); items.hasNext();) {
                write(items.next(), out);
                out.append(items.hasNext() ? "," : "");
            }
            out.append(']');
        } else {
            quote(String.valueOf(value), out);
        }
    }

    private static void quote(String text, StringBuilder out) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"', '\\' -> out.append('\\').append(c);
                case '\n' -> out.append("\\n");
                case '\t' -> out.append("\\t");
                default -> out.append(c);
            }
        }
        out.append('"');
    }
}
