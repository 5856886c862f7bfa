package org.collarbook.dispatch.lists;

import com.lowagie.text.Document;
import com.lowagie.text.Element;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;

/** At the foot of each page: which list it is of, for pages get parted, a word of caution, and "Page x of y". */
final class PdfFoot extends PdfPageEventHelper {

    private static final float SIZE = 8;
    /** Room for how many pages there are. */
    private static final float NUMBER = 18;
    private static final String CAUTION = "From recorded facts; it sees no dent. Look at each container. Unknown is"
            + " do-not-fill.";

    private final PdfLetters letters;
    private final String title;
    private final PdfTemplate pages;

    PdfFoot(PdfWriter writer, PdfLetters letters, String title) {
        this.letters = letters;
        this.title = letters.printable(title.replace('\n', ' '));
        // how many there are is known at the end, and then written into each of them
        this.pages = writer.getDirectContent().createTemplate(40, 12);
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        var canvas = writer.getDirectContent();
        float top = document.bottom() - 8;
        canvas.setLineWidth(0.5f);
        canvas.moveTo(document.left(), top);
        canvas.lineTo(document.right(), top);
        canvas.stroke();
        var page = "Page " + writer.getPageNumber() + " of ";
        float y = top - 11;
        float pageLeft = document.right() - NUMBER - letters.regular().getWidthPoint(page, SIZE);
        show(canvas, page, pageLeft, y);
        canvas.addTemplate(pages, document.right() - NUMBER, y);
        show(canvas, fitting(pageLeft - document.left() - 12), document.left(), y);
        show(canvas, CAUTION, document.left(), y - 10);
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

    private String fitting(float width) {
        int length = title.length();
        var shown = title;
        while (letters.regular().getWidthPoint(shown, SIZE) > width) {
            length = title.offsetByCodePoints(length, -1);
            shown = title.substring(0, length) + "…";
        }
        return shown;
    }
}
