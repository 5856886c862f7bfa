package org.collarbook.platform.paper;

import com.lowagie.text.Chunk;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPCellEvent;
import com.lowagie.text.pdf.PdfPTable;

/** The cells and tables of the sheet. */
public final class Cells {

    public static final float HAIRLINE = 0.5f;
    public static final float FRAME = 1.8f;

    private Cells() {}

    /** As wide as the page's text. A row that does not fit goes to the next page whole. */
    public static PdfPTable table(float... widths) {
        var table = new PdfPTable(widths);
        table.setWidthPercentage(100);
        return table;
    }

    public static Phrase phrase(Chunk... chunks) {
        var phrase = new Phrase();
        for (var chunk : chunks) {
            phrase.add(chunk);
        }
        return phrase;
    }

    public static PdfPCell cell(Phrase phrase) {
        var cell = new PdfPCell(phrase);
        cell.setLeading(1, 1.14f);
        cell.setBorder(Rectangle.BOTTOM);
        cell.setBorderWidth(HAIRLINE);
        cell.setPadding(4);
        cell.setPaddingTop(3);
        cell.setPaddingBottom(5);
        return cell;
    }

    public static PdfPCell bare(Phrase phrase) {
        var cell = cell(phrase);
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setPaddingLeft(0);
        return cell;
    }

    public static PdfPCell drawn(PdfPCellEvent mark, float height) {
        var cell = cell(new Phrase());
        cell.setCellEvent(mark);
        cell.setMinimumHeight(height);
        return cell;
    }

    /** A thick line around a whole row. */
    public static void frame(PdfPCell... row) {
        for (int i = 0; i < row.length; i++) {
            row[i].setUseVariableBorders(true);
            row[i].setBorder(Rectangle.TOP | Rectangle.BOTTOM | (i == 0 ? Rectangle.LEFT : 0)
                    | (i == row.length - 1 ? Rectangle.RIGHT : 0));
            row[i].setBorderWidth(FRAME);
        }
    }

    public static void add(PdfPTable table, PdfPCell... row) {
        for (var cell : row) {
            table.addCell(cell);
        }
    }
}
