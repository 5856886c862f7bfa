package org.collarbook.dispatch.lists;

import java.io.OutputStream;
import java.time.Clock;
import java.time.ZoneId;

import org.collarbook.platform.paper.Sheet;
import org.springframework.stereotype.Component;

/** The pull list on paper, worked from with a pencil. */
@Component
class PullListPdf {

    private static final String CAUTION = "From recorded facts; it sees no dent. Look at each container. Unknown is"
            + " do-not-fill.";

    /** By name, for an offset of none is printed as "Z", which says nothing to most people. */
    private static final ZoneId UTC = ZoneId.of("UTC");

    private final Clock clock;

    PullListPdf(Clock clock) {
        this.clock = clock;
    }

    /** The stream is left open. */
    void write(PullList list, OutputStream out) {
        var printed = clock.instant().atZone(UTC);
        try (var sheet = Sheet.open(out, title(list.asked()), null, CAUTION, printed)) {
            var letters = sheet.letters();
            var document = sheet.document();
            new PdfHead(letters).write(list, printed, document);
            var stops = new PdfStops(letters, list.asked().route() != null);
            list.stops().forEach(stop -> stops.write(stop, document));
            new PdfEnd(letters).write(list, document);
        }
    }

    private static String title(PullList.Asked asked) {
        return asked.title() + (asked.visit() == null ? "" : ", " + ListWords.longDay(asked.visit()));
    }
}
