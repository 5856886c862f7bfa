package org.collarbook.platform.paper;

import org.jspecify.annotations.Nullable;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;

/**
 * At the foot of each page: which sheet it is of, for pages get parted, a word of caution, and "Page x of y"; and at its
 * head what it is about, where that is told.
 */
final class Edges extends PdfPageEventHelper {

    private static final float SIZE = 8;
    /** Room for how many pages there are. */
    private static final float NUMBER = 18;

    private final Letters letters;
    private final String title;
    private final @Nullable String head;
    private final String caution;
    private final PdfTemplate pages;

    Edges(PdfWriter writer, Letters letters, String title, @Nullable String head, String caution) {
        this.letters = letters;
        this.title = letters.printable(title.replace('\n', ' '));
        this.head = head == null ? null : letters.printable(head.replace('\n', ' '));
        this.caution = letters.printable(caution);
        // how many there are is known at the end, and then written into each of them
        this.pages = writer.getDirectContent().createTemplate(40, 12);
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        var canvas = writer.getDirectContent();
        float top = document.bottom() - 8;
        line(canvas, document, top);
        var page = "Page " + writer.getPageNumber() + " of ";
        float y = top - 11;
        float pageLeft = document.right() - NUMBER - letters.regular().getWidthPoint(page, SIZE);
        show(canvas, page, pageLeft, y);
        canvas.addTemplate(pages, document.right() - NUMBER, y);
        show(canvas, fitting(title, pageLeft - document.left() - 12), document.left(), y);
        show(canvas, caution, document.left(), y - 10);
        if (head != null) {
            line(canvas, document, document.top() + 6);
            show(canvas, fitting(head, document.right() - document.left()), document.left(), document.top() + 10);
        }
    }

    private static void line(PdfContentByte canvas, Document document, float y) {
        canvas.setLineWidth(Cells.HAIRLINE);
        canvas.moveTo(document.left(), y);
        canvas.lineTo(document.right(), y);
        canvas.stroke();
    }

    private void show(PdfContentByte canvas, String text, float x, float y) {
        canvas.beginText();
        canvas.setFontAndSize(letters.regular(), SIZE);
        canvas.showTextAligned(Element.ALIGN_LEFT, text, x, y, 0);
        canvas.endText();
    }

    @Override
    public void onCloseDocument(PdfWriter writer, Document document) {
        pages.beginText();
        pages.setFontAndSize(letters.regular(), SIZE);
        pages.showText(String.valueOf(writer.getPageNumber() - 1));
        pages.endText();
    }

    private String fitting(String text, float width) {
        int length = text.length();
        var shown = text;
        while (letters.regular().getWidthPoint(shown, SIZE) > width) {
            length = text.offsetByCodePoints(length, -1);
            shown = text.substring(0, length) + "…";
        }
        return shown;
    }
}
