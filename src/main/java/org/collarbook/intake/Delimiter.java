package org.collarbook.intake;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * What stands between the cells: comma, semicolon or tab, whichever makes the most known headings of the header, and of
 * those the most headings. Delimiters within quotes do not count.
 */
final class Delimiter {

    private static final List<Character> CANDIDATES = List.of(',', ';', '\t');

    private Delimiter() {}

    static char of(String start, KnownHeadings known) {
        char best = CANDIDATES.getFirst();
        long most = 0;
        for (char candidate : CANDIDATES) {
            long score = score(start, candidate, known);
            if (score > most) {
                best = candidate;
                most = score;
            }
        }
        return best;
    }

    private static long score(String start, char delimiter, KnownHeadings known) {
        var format = CSVFormat.RFC4180.builder().setDelimiter(delimiter).setIgnoreEmptyLines(true).get();
        try (var parser = CSVParser.parse(start, format)) {
            var rows = parser.iterator();
            return rows.hasNext() ? score(rows.next(), known) : 0;
        } catch (IOException | UncheckedIOException malformed) {
            return 0;
        }
    }

    private static long score(CSVRecord header, KnownHeadings known) {
        return header.size() + header.stream().filter(known::knows).count() * LedgerText.LONGEST_ROW;
    }
}
