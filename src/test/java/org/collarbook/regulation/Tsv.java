package org.collarbook.regulation;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A strict reader: tabs and line ends only, no comment sign, no quoting, every row as wide as the header. */
public final class Tsv {

    private Tsv() {}

    public static List<Map<String, String>> read(String resource) {
        String[] lines = text(resource).split("\n", -1);
        String[] header = lines[0].split("\t", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (int i = 1; i < lines.length; i++) {
            if (lines[i].isEmpty() && i == lines.length - 1) {
                continue;
            }
            String[] cells = lines[i].split("\t", -1);
            if (cells.length != header.length) {
                throw new IllegalStateException(
                        resource + " line " + (i + 1) + ": " + cells.length + " cells, expected "
                                + header.length);
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int c = 0; c < cells.length; c++) {
                row.put(header[c], cells[c]);
            }
            rows.add(row);
        }
        return rows;
    }

    private static String text(String resource) {
        try (InputStream in = Tsv.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException(resource + " is not on the classpath");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
