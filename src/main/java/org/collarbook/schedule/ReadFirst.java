package org.collarbook.schedule;

import java.io.IOException;
import java.time.Instant;

import org.collarbook.platform.Caution;
import org.dhatim.fastexcel.Workbook;
import org.jspecify.annotations.Nullable;

/** A sheet of its own for what must be known about the rows, so that it does not stand in the way of their filters. */
final class ReadFirst {

    static final String NAME = "Read first";

    private ReadFirst() {}

    static void write(Workbook workbook, Instant read, String ruleBook, long rows, ScheduleFilter filter,
            @Nullable Replay replay)
            throws IOException {
        var sheet = workbook.newWorksheet(NAME);
        sheet.width(0, 16);
        sheet.width(1, 110);
        int row = 0;
        for (var line : new String[][]{{"Caution", Caution.TEXT}, {"Read at", read.toString()},
                {"Status", status(replay)},
                {"Rule book", ruleBook}, {"Rows", Long.toString(rows)}}) {
            sheet.inlineString(row, 0, line[0]);
            sheet.style(row, 0).bold().set();
            sheet.inlineString(row, 1, line[1]);
            sheet.style(row++, 1).wrapText(true).set();
        }
        sheet.inlineString(row, 0, "Asked for");
        sheet.style(row, 0).bold().set();
        var parameters = filter.parameters();
        sheet.inlineString(row, 1, parameters.isEmpty() ? "everything" : parameters.toString());
        sheet.finish();
    }

    private static String status(@Nullable Replay replay) {
        if (replay == null) {
            return "As of the date at each site when this was read; it changes with the days.";
        }
        return "As of " + (replay.asOf() == null ? "the date at each site when this was read" : replay.asOf())
                + ", by what was recorded until " + replay.knownAt() + " and the rules that were then loaded.";
    }
}
