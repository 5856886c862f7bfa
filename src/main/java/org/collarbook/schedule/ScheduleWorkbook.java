package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;

import org.collarbook.compliance.AsKnown;
import org.dhatim.fastexcel.Workbook;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;

/** The schedule as a workbook (ISO/IEC 29500, SpreadsheetML), written as it is read. */
@Component
class ScheduleWorkbook {

    static final String TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /** Spreadsheets read no more rows on a sheet; one is the header. */
    private static final int MOST_ROWS = 1_048_576 - 1;

    private final ScheduleRows rows;
    private final AsKnown asKnown;
    private final int mostRows;

    @Autowired
    ScheduleWorkbook(ScheduleRows rows, AsKnown asKnown) {
        this(rows, asKnown, MOST_ROWS);
    }

    ScheduleWorkbook(ScheduleRows rows, AsKnown asKnown, int mostRows) {
        this.rows = rows;
        this.asKnown = asKnown;
        this.mostRows = mostRows;
    }

    /** How rows are spread over sheets; all on one when nothing is said. */
    enum Sheets {
        YEAR
    }

    long write(Source source, ScheduleFilter filter, @Nullable Replay replay, @Nullable Sheets by, OutputStream out)
            throws IOException {
        // closed only when it is whole: a workbook that breaks off must not look like a finished one
        @SuppressWarnings("resource")
        var workbook = new Workbook(out, "Collarbook", null);
        var sheets = new ScheduleSheets(workbook, by, mostRows);
        try {
            rows.each(source, filter, sheets::add);
        } catch (UncheckedIOException gone) {
            throw gone.getCause();
        }
        sheets.end();
        var read = source.now().toInstant();
        var book = asKnown.book(replay == null ? read : replay.knownAt()).rules();
        ReadFirst.write(workbook, read, book.hash(), sheets.written(), filter, replay);
        workbook.setActiveTab(sheets.count());
        workbook.finish();
        return sheets.written();
    }
}
