package org.collarbook.schedule.packet;

import static org.collarbook.platform.paper.Cells.phrase;

import java.util.List;

import org.collarbook.platform.paper.Cells;
import org.collarbook.platform.paper.Letters;
import org.collarbook.platform.paper.Sheet;
import org.jspecify.annotations.Nullable;

import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;

/** The tables of a packet or a schedule: each has a heading, which stands again on every page that the table reaches. */
public final class PacketTables {

    private static final float SIZE = 8.5f;
    private static final float HASH = 7.5f;

    private final Sheet sheet;
    private final Letters letters;

    public PacketTables(Sheet sheet) {
        this.sheet = sheet;
        this.letters = sheet.letters();
    }

    /** Lines of a name and what is known under it. */
    public final class Facts {

        private final PdfPTable table;

        private Facts(String heading) {
            table = headed(heading, 1, 110, 430);
        }

        public Facts line(String name, @Nullable Object value) {
            return add(name, phrase(letters.text(PacketWords.known(value), SIZE)));
        }

        public Facts strong(String name, String value) {
            return add(name, phrase(letters.strong(value, SIZE + 1)));
        }

        /** A line for each, or that there is none. */
        public Facts lines(String name, List<String> values) {
            return line(name, values.isEmpty() ? PacketWords.NONE : String.join("\n", values));
        }

        public Facts hash(String name, @Nullable String value) {
            return add(name, phrase(letters.even(PacketWords.known(value), HASH)));
        }

        private Facts add(String name, Phrase value) {
            Cells.add(table, Cells.cell(phrase(letters.text(name, SIZE))), Cells.cell(value));
            return this;
        }

        public void end() {
            sheet.document().add(table);
        }
    }

    /** Columns under their names. */
    public final class Columns {

        private final PdfPTable table;

        private Columns(String heading, float[] widths, List<String> names) {
            table = headed(heading, 2, widths);
            names.forEach(name -> table.addCell(grey(phrase(letters.text(name, 7.5f)), 0.97f)));
        }

        public Columns row(@Nullable Object... values) {
            for (int i = 0; i < values.length; i++) {
                var text = PacketWords.known(values[i]);
                table.addCell(Cells.cell(i == 0 ? named(text) : phrase(letters.text(text, SIZE))));
            }
            return this;
        }

        public void end() {
            sheet.document().add(table);
        }
    }

    /** Its first line is what the row is about. */
    private Phrase named(String text) {
        int end = text.indexOf('\n');
        return end < 0
                ? phrase(letters.strong(text, SIZE))
                : phrase(letters.strong(text.substring(0, end), SIZE), letters.text(text.substring(end), SIZE));
    }

    public Facts facts(String heading) {
        return new Facts(heading);
    }

    public Columns columns(String heading, float[] widths, String... names) {
        return new Columns(heading, widths, List.of(names));
    }

    /** Several rows may make a heading; rows that do not fit go to the next page whole. */
    private PdfPTable headed(String heading, int rows, float... widths) {
        var table = Cells.table(widths);
        table.setSpacingBefore(9);
        var cell = grey(phrase(letters.strong(heading, 10.5f)), 0.9f);
        cell.setColspan(widths.length);
        cell.setBorder(Rectangle.TOP);
        cell.setBorderWidth(Cells.FRAME);
        table.addCell(cell);
        table.setHeaderRows(rows);
        return table;
    }

    private static PdfPCell grey(Phrase phrase, float grey) {
        var cell = Cells.cell(phrase);
        cell.setGrayFill(grey);
        return cell;
    }

    public void title(String title, String below) {
        var table = Cells.table(1);
        table.addCell(Cells.bare(phrase(letters.strong(title, 18), letters.text("\n" + below, 10))));
        sheet.document().add(table);
    }

    public void words(String text) {
        var table = Cells.table(1);
        table.setSpacingBefore(4);
        table.setKeepTogether(true);
        table.addCell(Cells.bare(phrase(letters.text(text, 9))));
        sheet.document().add(table);
    }

    /** Kept for last, once it is known. */
    public void leftOut() {
        if (letters.hasLeftOut()) {
            words(Letters.NO_SHAPE + " stands for a letter that this sheet cannot print; the register holds it.");
        }
    }
}
