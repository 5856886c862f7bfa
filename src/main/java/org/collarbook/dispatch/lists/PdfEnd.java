package org.collarbook.dispatch.lists;

import static org.collarbook.platform.paper.Cells.phrase;

import org.collarbook.platform.paper.Letters;
import org.collarbook.platform.paper.Cells;

import com.lowagie.text.Document;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;

/** The list's end: the places in dispute, room for notes and a name, and the caution in full. */
final class PdfEnd {

    private static final int NOTES = 4;

    private final Letters letters;

    PdfEnd(Letters letters) {
        this.letters = letters;
    }

    void write(PullList list, Document document) {
        if (!list.placeDisputed().isEmpty()) {
            document.add(disputed(list));
        }
        document.add(notes(list.caution()));
    }

    private PdfPTable disputed(PullList list) {
        var rows = new PdfRows(letters);
        var table = Cells.table(PdfRows.WIDTHS);
        table.setSpacingBefore(12);
        var heading = Cells.cell(phrase(letters.strong("Places in dispute", 12), letters.text(
                "\nTwo places claim each of these. Neither is believed until somebody has looked: tick where it is.",
                9)));
        heading.setColspan(PdfRows.WIDTHS.length);
        heading.setGrayFill(0.9f);
        heading.setBorder(Rectangle.TOP);
        heading.setBorderWidth(Cells.FRAME);
        table.addCell(heading);
        table.setHeaderRows(1);
        list.placeDisputed().forEach(one -> Cells.add(table, rows.disputed(one)));
        return table;
    }

    /** Kept on one page. */
    private PdfPTable notes(String caution) {
        var table = Cells.table(60, 220, 50, 210);
        table.setSpacingBefore(16);
        table.setKeepTogether(true);
        table.addCell(line("Notes", 4));
        for (int i = 1; i < NOTES; i++) {
            table.addCell(line(" ", 4));
        }
        Cells.add(table, line("Worked by", 1), line(" ", 1), line("Signed", 1), line(" ", 1));
        Cells.add(table, line("Date", 1), line(" ", 1), line("Checked by", 1), line(" ", 1));
        if (letters.hasLeftOut()) {
            table.addCell(words(Letters.NO_SHAPE + " stands for a letter that this sheet cannot print; the register"
                    + " holds it."));
        }
        table.addCell(words(caution));
        return table;
    }

    private PdfPCell words(String text) {
        var cell = Cells.bare(phrase(letters.text(text, 9)));
        cell.setColspan(4);
        cell.setPaddingTop(6);
        return cell;
    }

    private PdfPCell line(String name, int columns) {
        var cell = Cells.cell(phrase(letters.text(name, 9)));
        cell.setColspan(columns);
        cell.setPaddingTop(10);
        cell.setPaddingLeft(0);
        return cell;
    }
}
