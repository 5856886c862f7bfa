package org.collarbook.schedule;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.LocalDate;
import java.util.Objects;

import org.collarbook.schedule.ScheduleWorkbook.Sheets;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.jspecify.annotations.Nullable;

/**
 * The sheets of rows, each with a header that stays in sight and filters. Text is written as inline strings: of those
 * nothing is kept until the end, and they are no formulas, whatever they begin with, so no apostrophe is needed.
 */
final class ScheduleSheets {

    static final String[] COLUMNS = {"due", "last_day", "status", "requirement", "rule", "kind", "specification",
            "maker", "serial", "manufactured", "size", "tag", "site", "site_name", "customer", "owner", "routes",
            "container_id", "jurisdiction"};
    private static final int[] WIDTHS = {10, 12, 16, 20, 22, 18, 16, 8, 16, 13, 10, 20, 14, 26, 14, 20, 16, 38, 12};
    private static final String MONTH = "yyyy-mm";
    private static final String DAY = "yyyy-mm-dd";
    private static final int FLUSHED = 500;

    private final Workbook workbook;
    private final @Nullable Sheets by;
    private final int mostRows;
    private @Nullable Worksheet sheet;
    private String title = "";
    private int part;
    private int row;
    private int count;
    private long written;

    ScheduleSheets(Workbook workbook, @Nullable Sheets by, int mostRows) {
        this.workbook = workbook;
        this.by = by;
        this.mostRows = mostRows;
    }

    int count() {
        return count;
    }

    long written() {
        return written;
    }

    /** Rows come in the order of their months, so a year that has ended does not come again. */
    void add(ScheduleRow line) {
        try {
            var wanted = by == null ? "Schedule" : String.valueOf(line.due().getYear());
            if (!wanted.equals(title)) {
                begin(wanted, 1);
            } else if (row == mostRows) {
                begin(wanted, part + 1);
            }
            row++;
            written++;
            cells(Objects.requireNonNull(sheet), line);
            if (row % FLUSHED == 0) {
                sheet.flush();
            }
        } catch (IOException gone) {
            throw new UncheckedIOException(gone);
        }
    }

    /** A workbook without rows has its header all the same. */
    void end() throws IOException {
        if (sheet == null) {
            begin("Schedule", 1);
        }
        finish(Objects.requireNonNull(sheet));
    }

    private void begin(String wanted, int number) throws IOException {
        if (sheet != null) {
            finish(sheet);
        }
        title = wanted;
        part = number;
        row = 0;
        count++;
        sheet = workbook.newWorksheet(number == 1 ? wanted : wanted + " (" + number + ")");
        sheet.freezePane(0, 1);
        for (int column = 0; column < COLUMNS.length; column++) {
            sheet.width(column, WIDTHS[column]);
            sheet.inlineString(0, column, COLUMNS[column]);
            sheet.style(0, column).bold().set();
        }
    }

    private void finish(Worksheet ended) throws IOException {
        ended.setAutoFilter(0, 0, row, COLUMNS.length - 1);
        ended.finish();
    }

    private void cells(Worksheet to, ScheduleRow line) {
        date(to, 0, line.lastDay(), MONTH);
        date(to, 1, line.lastDay(), DAY);
        var manufactured = line.manufacturedIn();
        date(to, 9, manufactured == null ? null : manufactured.atEndOfMonth(), MONTH);
        texts(to, 2, line.status(), line.requirement(), line.rule(), line.kind(), line.specification(), line.maker(),
                line.serial());
        texts(to, 10, line.size(), line.tag(), line.site(), line.siteName(), line.customer(), line.owner(),
                line.routes() == null ? null : String.join(", ", line.routeCodes()), line.containerId().toString(),
                line.jurisdiction());
    }

    private void date(Worksheet to, int column, @Nullable LocalDate day, String format) {
        if (day != null) {
            to.value(row, column, day);
            to.style(row, column).format(format).set();
        }
    }

    private void texts(Worksheet to, int first, @Nullable String... texts) {
        for (int i = 0; i < texts.length; i++) {
            if (texts[i] != null) {
                to.inlineString(row, first + i, texts[i]);
            }
        }
    }
}
