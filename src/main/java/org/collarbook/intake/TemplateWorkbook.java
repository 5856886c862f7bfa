package org.collarbook.intake;

import java.io.ByteArrayOutputStream;
import java.io.IOException;

import org.dhatim.fastexcel.Workbook;

/** The template as a workbook. Its cells are text, for a spreadsheet makes a date of a mark such as 5-04. */
final class TemplateWorkbook {

    /** So many rows below the header are text before anybody types there. */
    private static final int PREPARED = 1000;
    private static final int WIDTH = 18;
    private static final int WIDE = 110;

    private TemplateWorkbook() {}

    static byte[] bytes() throws IOException {
        var out = new ByteArrayOutputStream();
        try (var workbook = new Workbook(out, "Collarbook", null)) {
            ledger(workbook);
            meanings(workbook);
        }
        return out.toByteArray();
    }

    /** By its name it is told from the sheet beside it when the workbook is handed in. */
    private static void ledger(Workbook workbook) {
        var sheet = workbook.newWorksheet("Ledger");
        var columns = LedgerColumn.values();
        for (var column : columns) {
            int at = column.ordinal();
            sheet.width(at, WIDTH);
            sheet.inlineString(0, at, column.word());
            sheet.style(0, at).bold().set();
            int row = 1;
            for (var example : column.examples()) {
                if (!example.isEmpty()) {
                    sheet.inlineString(row, at, example);
                }
                row++;
            }
        }
        sheet.range(1, 0, PREPARED, columns.length - 1).style().format("@").set();
        sheet.freezePane(0, 1);
    }

    private static void meanings(Workbook workbook) {
        var sheet = workbook.newWorksheet("Columns");
        sheet.width(0, WIDTH);
        sheet.width(2, WIDE);
        int at = 0;
        for (var heading : new String[]{"column", "required", "meaning"}) {
            sheet.inlineString(0, at, heading);
            sheet.style(0, at++).bold().set();
        }
        for (var column : LedgerColumn.values()) {
            int row = column.ordinal() + 1;
            sheet.inlineString(row, 0, column.word());
            sheet.inlineString(row, 1, column.required() ? "yes" : "no");
            sheet.inlineString(row, 2, column.meaning());
            sheet.style(row, 2).wrapText(true).set();
        }
    }
}
