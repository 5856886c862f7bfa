package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.List;
import java.util.Objects;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.SpreadsheetText;
import org.jspecify.annotations.Nullable;

/** Reads a ledger (RFC 4180; comma, semicolon or tab as the header has it) one row at a time. */
final class LedgerReader implements AutoCloseable {

    private static final String KNOWN = "one of " + String.join(", ", LedgerColumn.words());

    private final LedgerText text;
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private final CSVFormat format;
    private final CSVRecord header;
    private final List<@Nullable LedgerColumn> columns;
    private @Nullable CSVRecord last;
    private boolean anyRow;

    LedgerReader(InputStream bytes) throws IOException {
        text = new LedgerText(bytes);
        format = CSVFormat.RFC4180.builder().setDelimiter(delimiter(text.start())).setIgnoreEmptyLines(false).get();
        parser = format.parse(text);
        records = parser.iterator();
        var first = read();
        if (first == null || first.record.size() == 1 && first.record.get(0).isBlank()) {
            throw LedgerFault.empty();
        }
        header = first.record;
        columns = columns(header);
    }

    private record Raw(long line, CSVRecord record) {}

    private static char delimiter(String header) {
        char best = ',';
        for (char candidate : new char[]{';', '\t'}) {
            if (count(header, candidate) > count(header, best)) {
                best = candidate;
            }
        }
        return best;
    }

    private static long count(String text, char wanted) {
        return text.chars().filter(c -> c == wanted).count();
    }

    /** The next row that is not an empty line; null after the last. A file without any row is refused. */
    @Nullable
    LedgerRow next() {
        for (var raw = read(); raw != null; raw = read()) {
            if (raw.record.size() > 1 || !raw.record.get(0).isEmpty()) {
                anyRow = true;
                last = raw.record;
                return row(raw);
            }
        }
        if (!anyRow) {
            throw LedgerFault.noRows();
        }
        return null;
    }

    private @Nullable Raw read() {
        long line = parser.getCurrentLineNumber() + 1;
        text.rowBegins(line);
        try {
            if (!records.hasNext()) {
                return null;
            }
            var record = records.next();
            if (length(record) > LedgerText.LONGEST_ROW) {
                throw LedgerFault.rowTooLong(line);
            }
            return new Raw(line, record);
        } catch (UncheckedIOException malformed) {
            throw text.isAtEnd() ? LedgerFault.unclosedQuote(line) : LedgerFault.malformedQuotes(line);
        }
    }

    private static int length(CSVRecord record) {
        int length = record.size();
        for (var cell : record) {
            length += cell.length();
        }
        return length;
    }

    private LedgerRow row(Raw raw) {
        var cells = new @Nullable String[LedgerColumn.values().length];
        for (int i = 0; i < Math.min(raw.record.size(), columns.size()); i++) {
            var column = columns.get(i);
            if (column != null) {
                var cell = SpreadsheetText.unguarded(raw.record.get(i)).strip();
                cells[column.ordinal()] = cell.isEmpty() ? null : cell;
            }
        }
        return new LedgerRow(raw.line, raw.record.size(), columns.size(), cells);
    }

    private static List<@Nullable LedgerColumn> columns(CSVRecord header) {
        var columns = new ArrayList<@Nullable LedgerColumn>();
        var errors = new ArrayList<FieldError>();
        var seen = EnumSet.noneOf(LedgerColumn.class);
        for (var heading : header) {
            var column = LedgerColumn.of(heading);
            if (LinesToMend.isAdded(heading)) {
                columns.add(null);
            } else if (column == null) {
                errors.add(new FieldError("/ledger", "UNKNOWN_COLUMN", Shown.of(heading), KNOWN));
            } else if (!seen.add(column)) {
                errors.add(new FieldError("/ledger", "DUPLICATE_COLUMN", column.word(), "each column once"));
            } else {
                columns.add(column);
            }
        }
        for (var column : LedgerColumn.values()) {
            if (column.required() && !seen.contains(column)) {
                errors.add(FieldError.missing("/ledger", "the column " + column.word()));
            }
        }
        if (!errors.isEmpty()) {
            throw LedgerFault.header(errors.subList(0, Math.min(errors.size(), 50)));
        }
        return columns;
    }

    /** How the file is written, to write rows of it likewise. */
    CSVFormat format() {
        return format;
    }

    CSVRecord header() {
        return header;
    }

    /** The row that was read last, cell by cell as it was handed in. */
    CSVRecord asHandedIn() {
        return Objects.requireNonNull(last);
    }

    @Override
    public void close() throws IOException {
        parser.close();
    }
}
