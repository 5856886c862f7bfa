package org.collarbook.platform.paper;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfLiteral;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;

/** A document on paper: Letter, black on white. Closed, it is written; its stream is left open. */
public final class Sheet implements AutoCloseable {

    private static final float MARGIN = 36;
    private static final float FOOT = 68;
    private static final float HEAD = 48;

    private final Document document;
    private final Letters letters;

    private Sheet(Document document, Letters letters) {
        this.document = document;
        this.letters = letters;
    }

    /** {@code head} stands at the top of every page, {@code title} and {@code caution} at its foot. */
    public static Sheet open(OutputStream out, String title, @Nullable String head, String caution,
            ZonedDateTime printed) {
        var letters = new Letters(title.hashCode());
        var document = new Document(PageSize.LETTER, MARGIN, MARGIN, head == null ? MARGIN : HEAD, FOOT);
        var writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        document.addTitle(title);
        document.setDocumentLanguage("en-US");
        document.open();
        describe(writer, title, printed);
        writer.setPageEvent(new Edges(writer, letters, title, head, caution));
        return new Sheet(document, letters);
    }

    /** By the clock, and the same for the same list: the library would take the system's time and a random id. */
    private static void describe(PdfWriter writer, String title, ZonedDateTime printed) {
        writer.getExtraCatalog().put(PdfName.LANG, new PdfString("en-US"));
        writer.getInfo().put(PdfName.CREATIONDATE, new PdfDate(GregorianCalendar.from(printed)));
        var id = UUID.nameUUIDFromBytes((title + printed.toInstant()).getBytes(StandardCharsets.UTF_8)).toString()
                .replace("-", "");
        writer.getInfo().put(PdfName.FILEID, new PdfLiteral("[<" + id + "><" + id + ">]"));
    }

    public Document document() {
        return document;
    }

    public Letters letters() {
        return letters;
    }

    @Override
    public void close() {
        document.close();
    }
}
