package org.collarbook.dispatch.lists;

import static org.collarbook.platform.paper.Cells.phrase;

import java.util.Iterator;
import java.util.List;

import org.collarbook.platform.paper.Letters;
import org.collarbook.platform.paper.Cells;

import com.lowagie.text.Chunk;
import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfPTableEvent;

/** One stop after the other: what must come back from it, and below that what has to be looked into there. */
final class PdfStops {

    /** Rows are handed over in pieces, so that a site with thousands of containers is not held as a whole. */
    private static final int PIECE = 50;

    private final Letters letters;
    private final PdfRows rows;
    private final boolean oneRoute;

    /** {@code oneRoute}: the list's head names it, so a stop need not. */
    PdfStops(Letters letters, boolean oneRoute) {
        this.letters = letters;
        this.oneRoute = oneRoute;
        this.rows = new PdfRows(letters);
    }

    void write(PullList.Stop stop, Document document) {
        if (!stop.containers().isEmpty()) {
            var table = table(heading(stop, ListWords.bySize(stop.containers()), true), "Due", "What to do, and why");
            write(stop.containers().stream().map(rows::pulled).iterator(), table, document);
        }
        if (!stop.undetermined().isEmpty()) {
            var count = stop.undetermined().size() + " to look into";
            var table = table(heading(stop, count, stop.containers().isEmpty()),
                    "Whether it must come back cannot be told: read it off, write it down");
            write(stop.undetermined().stream().map(rows::toLookInto).iterator(), table, document);
        }
    }

    private static void write(Iterator<PdfPCell[]> rows, PdfPTable table, Document document) {
        table.setComplete(false);
        for (int count = 1; rows.hasNext(); count++) {
            Cells.add(table, rows.next());
            if (count % PIECE == 0) {
                document.add(table);
                table.setSpacingBefore(0);
            }
        }
        table.setComplete(true);
        document.add(table);
    }

    /** Its heading and the names of the columns stand again on each page that it reaches. */
    private PdfPTable table(PdfPCell heading, String... columns) {
        var table = Cells.table(PdfRows.WIDTHS);
        table.setSpacingBefore(12);
        table.addCell(heading);
        for (var name : List.of("Done", "Scan", "Container")) {
            table.addCell(column(name, 1));
        }
        for (var name : columns) {
            table.addCell(column(name, 3 - columns.length));
        }
        table.setHeaderRows(2);
        table.setTableEvent(continued());
        return table;
    }

    private PdfPCell column(String name, int columns) {
        var cell = Cells.cell(phrase(letters.text(name, 7.5f)));
        cell.setColspan(columns);
        cell.setPaddingTop(2);
        cell.setPaddingBottom(2);
        return cell;
    }

    /** {@code whole}: with the address and the visits, unless they stand above already. */
    private PdfPCell heading(PullList.Stop stop, String count, boolean whole) {
        var table = new PdfPTable(new float[]{36, 259, 245});
        var site = stop.site();
        var number = line(letters.strong(stop.position() == null ? "–" : stop.position().toString(), 18));
        var name = line(letters.strong(site.name(), 12), letters.text("  " + site.code(), 9),
                letters.text(whole ? "\n" + (site.address() == null ? "address not known" : site.address()) : "", 9));
        var route = stop.route() == null || oneRoute ? "" : "route " + stop.route() + ", ";
        var visit = line(letters.strong(count, 10),
                letters.text(whole ? "\n" + route + ListWords.visits(stop) : "", 9));
        visit.setHorizontalAlignment(Element.ALIGN_RIGHT);
        Cells.add(table, number, name, visit);
        var cell = new PdfPCell(table);
        cell.setColspan(PdfRows.WIDTHS.length);
        cell.setGrayFill(0.9f);
        cell.setBorder(Rectangle.TOP);
        cell.setBorderWidth(Cells.FRAME);
        return cell;
    }

    private static PdfPCell line(Chunk... chunks) {
        var cell = Cells.cell(phrase(chunks));
        cell.setBorder(Rectangle.NO_BORDER);
        return cell;
    }

    /** Told apart from another stop's: the heading of a table that began on an earlier page. */
    private PdfPTableEvent continued() {
        var pages = new int[1];
        return (_, widths, heights, headings, _, canvases) -> {
            // a piece that goes on further down the same page comes without them
            if (headings > 0 && pages[0]++ > 0) {
                var canvas = canvases[PdfPTable.TEXTCANVAS];
                canvas.beginText();
                canvas.setFontAndSize(letters.regular(), 6.5f);
                canvas.showTextAligned(Element.ALIGN_LEFT, "continued", widths[0][0] + 4, heights[1] + 2, 0);
                canvas.endText();
            }
        };
    }
}
