package org.collarbook.dispatch.lists;

import static org.collarbook.platform.paper.Cells.phrase;

import java.util.List;

import org.collarbook.platform.paper.Letters;
import org.collarbook.platform.paper.Cells;
import org.jspecify.annotations.Nullable;

import com.lowagie.text.Chunk;
import com.lowagie.text.Element;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;

/** What to load, by size, with room to write what was loaded. */
final class PdfLoad {

    private static final float SIZE = 10;

    private final Letters letters;

    PdfLoad(Letters letters) {
        this.letters = letters;
    }

    PdfPTable table(List<PullList.SizeTotal> sizes) {
        var table = Cells.table(110, 60, 60, 90, 70, 70, 80);
        table.setSpacingBefore(4);
        table.setHeaderRows(1);
        var names = List.of("Size", "To load", "Loaded", "In date at depot", "Short", "Rack takes", "Does not fit");
        for (var name : names) {
            var cell = right(letters.strong(name, 8.5f));
            cell.setGrayFill(0.9f);
            cell.setHorizontalAlignment(name.equals("Size") ? Element.ALIGN_LEFT : Element.ALIGN_RIGHT);
            table.addCell(cell);
        }
        sizes.forEach(size -> load(table, size));
        if (sizes.isEmpty()) {
            var nothing = Cells.cell(phrase(letters.text("Nothing to load.", SIZE)));
            nothing.setColspan(names.size());
            table.addCell(nothing);
        }
        return table;
    }

    private void load(PdfPTable table, PullList.SizeTotal size) {
        var name = right(letters.strong(size.size(), 12));
        name.setHorizontalAlignment(Element.ALIGN_LEFT);
        Cells.add(table, name, right(letters.strong(ListWords.number(size.load()), 12)),
                right(letters.text("______", SIZE)), number(size.inDateAtDepot(), false),
                number(size.shortfall(), true), number(size.rack(), false), number(size.overRack(), true));
    }

    /** What lacks room or stock is framed, for somebody has to do something about it before the truck leaves. */
    private PdfPCell number(@Nullable Number number, boolean framed) {
        boolean lacks = framed && number != null && number.longValue() > 0;
        var text = ListWords.number(number);
        var cell = right(lacks ? letters.strong(text, 12) : letters.text(text, SIZE));
        if (lacks) {
            Cells.frame(cell);
        }
        return cell;
    }

    private static PdfPCell right(Chunk chunk) {
        var cell = Cells.cell(phrase(chunk));
        cell.setHorizontalAlignment(Element.ALIGN_RIGHT);
        cell.setVerticalAlignment(Element.ALIGN_MIDDLE);
        return cell;
    }
}
