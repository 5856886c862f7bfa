package org.collarbook.intake.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

import org.collarbook.intake.files.SheetRows.Area;
import org.collarbook.intake.files.SheetRows.Row;
import org.collarbook.intake.files.Workbook.Sheet;

/**
 * A sheet as CSV (RFC 4180) in UTF-8, made row by row as it is read. Row n is line n, so that a report can be followed
 * on the sheet: blank rows are blank lines. Each row has as many cells as the first that is not blank, the header.
 */
final class SheetText extends InputStream {

    private final Workbook workbook;
    private final SheetRows rows;
    private final Budget budget;
    private byte[] text = {};
    private int at;
    private int line;
    private int header;
    private int width;
    private boolean ended;

    SheetText(Workbook workbook, Sheet sheet, Budget budget) throws IOException {
        this.workbook = workbook;
        this.rows = new SheetRows(workbook, sheet.part());
        this.budget = budget;
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        while (at == text.length && !ended) {
            make();
        }
        if (at == text.length) {
            return -1;
        }
        int count = Math.min(length, text.length - at);
        System.arraycopy(text, at, buffer, offset, count);
        at += count;
        return count;
    }

    private void make() throws IOException {
        var row = rows.next();
        if (row == null) {
            ended = true;
            rows.merged().forEach(this::requireOutside);
            return;
        }
        if (header == 0) {
            header = row.number();
            width = row.cells().size();
        }
        var made = new StringBuilder("\r\n".repeat(row.number() - line - 1));
        int start = made.length();
        append(row, made);
        if (made.length() - start > HandedIn.LONGEST_ROW) {
            throw FileFault.rowTooLong(row.number(), HandedIn.LONGEST_ROW);
        }
        line = row.number();
        text = made.append("\r\n").toString().getBytes(StandardCharsets.UTF_8);
        at = 0;
        budget.take(text.length, 0, 0);
    }

    private void append(Row row, StringBuilder made) {
        for (int column = 0; column < Math.max(width, row.cells().size()); column++) {
            made.append(column == 0 ? "" : ",")
                    .append(column < row.cells().size() ? quoted(row.cells().get(column)) : "");
        }
    }

    /** What might be a delimiter is quoted too, so that nobody counts it as one. */
    private static String quoted(String cell) {
        return cell.chars().anyMatch(c -> c == ',' || c == ';' || c == '\t' || c == '"')
                ? '"' + cell.replace("\"", "\"\"") + '"'
                : cell;
    }

    /** Of merged cells only the first has the value, and blank is "not known" in the others: nobody guesses which. */
    private void requireOutside(Area merged) {
        if (merged.bottom() >= header && merged.top() <= line && merged.left() < width) {
            throw FileFault.problem("MERGED_CELLS", "Cells are merged on row " + merged.top() + " of the sheet.",
                    "row " + merged.top() + ", column " + (merged.left() + 1),
                    "each cell by itself: take the merge off and fill them all").with("line", merged.top())
                    .asException();
        }
    }

    @Override
    public void close() throws IOException {
        rows.close();
        workbook.close();
    }
}
