package org.collarbook.dispatch.lists;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import java.util.UUID;

import org.springframework.stereotype.Component;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfLiteral;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfWriter;

/** The pull list on paper: Letter, black on white, worked from with a pencil. */
@Component
class PullListPdf {

    private static final float MARGIN = 36;
    private static final float FOOT = 68;

    /** By name, for an offset of none is printed as "Z", which says nothing to most people. */
    private static final ZoneId UTC = ZoneId.of("UTC");

    private final Clock clock;

    PullListPdf(Clock clock) {
        this.clock = clock;
    }

    /** The stream is left open. */
    void write(PullList list, OutputStream out) {
        var printed = clock.instant().atZone(UTC);
        var title = title(list.asked());
        var letters = new PdfLetters(title.hashCode());
        var document = new Document(PageSize.LETTER, MARGIN, MARGIN, MARGIN, FOOT);
        var writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        document.addTitle(title);
        document.setDocumentLanguage("en-US");
        document.open();
        describe(writer, title, printed);
        writer.setPageEvent(new PdfFoot(writer, letters, title));
        new PdfHead(letters).write(list, printed, document);
        var stops = new PdfStops(letters, list.asked().route() != null);
        list.stops().forEach(stop -> stops.write(stop, document));
        new PdfEnd(letters).write(list, document);
        document.close();
    }

    private static String title(PullList.Asked asked) {
        return asked.title() + (asked.visit() == null ? "" : ", " + ListWords.longDay(asked.visit()));
    }

    /** By the clock, and the same for the same list: the library would take the system's time and a random id. */
    private static void describe(PdfWriter writer, String title, ZonedDateTime printed) {
        writer.getExtraCatalog().put(PdfName.LANG, new PdfString("en-US"));
        writer.getInfo().put(PdfName.CREATIONDATE, new PdfDate(GregorianCalendar.from(printed)));
        var id = UUID.nameUUIDFromBytes((title + printed.toInstant()).getBytes(StandardCharsets.UTF_8)).toString()
                .replace("-", "");
        writer.getInfo().put(PdfName.FILEID, new PdfLiteral("[<" + id + "><" + id + ">]"));
    }
}
