package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.Objects;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.collarbook.intake.files.FileFault;
import org.jspecify.annotations.Nullable;

/** Reads a ledger (RFC 4180; comma, semicolon or tab as the header has it) one row at a time. */
final class LedgerReader implements AutoCloseable {

    private final LedgerText text;
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private final CSVFormat format;
    private final CSVRecord header;
    private final RowReader rows;
    private @Nullable CSVRecord last;
    private boolean anyRow;

    LedgerReader(InputStream bytes, @Nullable ColumnMap map) throws IOException {
        text = new LedgerText(bytes);
        var headings = new KnownHeadings(map);
        format = CSVFormat.RFC4180.builder().setDelimiter(Delimiter.of(text.start(), headings))
                .setIgnoreEmptyLines(false).get();
        parser = format.parse(text);
        records = parser.iterator();
        var first = read();
        while (first != null && isBlank(first)) {
            first = read();
        }
        if (first == null) {
            throw LedgerFault.empty();
        }
        header = first.record;
        rows = new RowReader(Header.read(first.line, header, headings), map);
    }

    private record Raw(long line, CSVRecord record) {}

    /** An empty line, or one of delimiters only, as spreadsheets leave them behind a table. */
    private static boolean isBlank(Raw raw) {
        return raw.record.stream().allMatch(String::isBlank);
    }

    /** The next row with something in it; null after the last. A file without any row is refused. */
    @Nullable
    LedgerRow next() {
        for (var raw = read(); raw != null; raw = read()) {
            if (!isBlank(raw)) {
                anyRow = true;
                last = raw.record;
                return rows.row(raw.line, raw.record);
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
                throw FileFault.rowTooLong(line, LedgerText.LONGEST_ROW);
            }
            return new Raw(line, record);
        } catch (UncheckedIOException malformed) {
            // the library has one exception for both
            throw String.valueOf(malformed.getMessage()).contains("EOF reached")
                    ? LedgerFault.unclosedQuote(line)
                    : LedgerFault.malformedQuotes(line);
        }
    }

    private static int length(CSVRecord record) {
        int length = record.size();
        for (var cell : record) {
            length += cell.length();
        }
        return length;
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
