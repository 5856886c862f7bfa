package org.collarbook.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/**
 * One of the things that a cell lists: {@code leaking since 2026-03-02 | note at the valve; dented}. Things are apart by
 * {@code ;}, what is said of one by {@code |}: a head, then a word each with what follows it. What has one of these signs
 * in it stands in double quotes, doubled within.
 */
record ListItem(String head, Map<String, String> more) {

    ListItem {
        more = Map.copyOf(more);
    }

    static ListItem of(String head) {
        return new ListItem(head, Map.of());
    }

    /** What is said of the thing under this word; null where nothing is. */
    @Nullable
    String get(String word) {
        return more.get(word);
    }

    /** Null where a quote is not closed, something stands behind one, or one word comes twice. */
    static @Nullable List<ListItem> read(String cell) {
        var items = new ArrayList<ListItem>();
        var parts = new ArrayList<String>();
        int at = 0;
        while (at <= cell.length()) {
            var part = new StringBuilder();
            at = readPart(cell, at, part);
            if (at < 0) {
                return null;
            }
            parts.add(part.toString());
            if (at == cell.length() || cell.charAt(at) == ';') {
                var item = of(parts);
                if (item == null) {
                    return null;
                }
                items.add(item);
                parts.clear();
            }
            at++;
        }
        return items;
    }

    /** Where the part ends; below nothing where its quotes are wrong. */
    private static int readPart(String cell, int from, StringBuilder part) {
        int at = from;
        while (at < cell.length() && cell.charAt(at) == ' ') {
            at++;
        }
        if (at == cell.length() || cell.charAt(at) != '"') {
            int end = at;
            while (end < cell.length() && cell.charAt(end) != ';' && cell.charAt(end) != '|') {
                end++;
            }
            part.append(cell.substring(at, end).strip());
            return end;
        }
        for (at++; at < cell.length(); at++) {
            if (cell.charAt(at) != '"') {
                part.append(cell.charAt(at));
            } else if (at + 1 < cell.length() && cell.charAt(at + 1) == '"') {
                part.append(cell.charAt(at++));
            } else {
                return endOfQuoted(cell, at + 1);
            }
        }
        return -1;
    }

    private static int endOfQuoted(String cell, int from) {
        int at = from;
        while (at < cell.length() && cell.charAt(at) == ' ') {
            at++;
        }
        return at == cell.length() || cell.charAt(at) == ';' || cell.charAt(at) == '|' ? at : -1;
    }

    private static @Nullable ListItem of(List<String> parts) {
        var more = new LinkedHashMap<String, String>();
        for (var part : parts.subList(1, parts.size())) {
            int end = part.indexOf(' ');
            var word = (end < 0 ? part : part.substring(0, end)).toLowerCase(Locale.ROOT);
            if (more.put(word, end < 0 ? "" : part.substring(end + 1).strip()) != null) {
                return null;
            }
        }
        return new ListItem(parts.getFirst(), more);
    }

    /** A list of heads and what is said of them, each by its parts, as {@link #read} reads it. */
    static String write(List<List<String>> items) {
        return items.stream().map(parts -> parts.stream().map(ListItem::quoted).collect(Collectors.joining(" | ")))
                .collect(Collectors.joining("; "));
    }

    private static String quoted(String part) {
        return part.indexOf(';') < 0 && part.indexOf('|') < 0 && !part.startsWith("\"")
                ? part
                : '"' + part.replace("\"", "\"\"") + '"';
    }
}
