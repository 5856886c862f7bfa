package org.collarbook.dispatch.lists;

import static org.collarbook.platform.paper.Cells.phrase;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

import org.collarbook.platform.paper.Letters;
import org.collarbook.platform.paper.Cells;

import com.lowagie.text.Document;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfPTable;

/** What stands at the head of the list: which visit it is for, and what to load before it. */
final class PdfHead {

    private static final DateTimeFormatter PRINTED = DateTimeFormatter.ofPattern("EEE, MMM d, uuuu, HH:mm zzz",
            Locale.US);
    private static final float SIZE = 10;

    private final Letters letters;

    PdfHead(Letters letters) {
        this.letters = letters;
    }

    void write(PullList list, ZonedDateTime printed, Document document) {
        document.add(title(list.asked()));
        document.add(visit(list, printed));
        document.add(summary(list));
        if (list.count() > 0) {
            document.add(new PdfLoad(letters).table(list.sizes()));
            document.add(actions(list));
        }
    }

    private PdfPTable title(PullList.Asked asked) {
        var table = Cells.table(1);
        var title = Cells.bare(phrase(letters.strong(asked.title(), 20)));
        title.setPaddingTop(0);
        table.addCell(title);
        var day = Cells.bare(phrase(letters.strong(asked.visit() == null
                ? "Pull list"
                : "Pull list for " + ListWords.longDay(asked.visit()), 13)));
        day.setPaddingBottom(6);
        day.setBorder(Rectangle.BOTTOM);
        day.setBorderWidth(Cells.FRAME);
        table.addCell(day);
        return table;
    }

    private PdfPTable visit(PullList list, ZonedDateTime printed) {
        var table = Cells.table(52, 250, 52, 186);
        table.setSpacingBefore(4);
        var asked = list.asked();
        var route = asked.route();
        var plan = list.plan();
        fact(table, "Route", route == null ? "by stop" : route.code() + ", " + route.name());
        fact(table, "Printed", PRINTED.format(printed));
        fact(table, "Depot", route == null ? "by route" : place(route.depot()));
        fact(table, "Plan", plan == null ? "none followed" : "follows plan " + plan.number());
        fact(table, "Vehicle", route == null
                ? "by route"
                : route.vehicle() == null ? ListWords.UNKNOWN : ListWords.named(route.vehicle()));
        fact(table, "To last", asked.before() == null
                ? "until the visit after this one"
                : "until " + ListWords.day(asked.before()));
        return table;
    }

    private static String place(PullList.NamedSite site) {
        return ListWords.named(site) + (site.address() == null ? "" : "\n" + site.address());
    }

    private void fact(PdfPTable table, String name, String value) {
        var label = Cells.bare(phrase(letters.text(name, SIZE)));
        var fact = Cells.bare(phrase(letters.strong(value, SIZE)));
        for (var cell : List.of(label, fact)) {
            cell.setPaddingTop(1);
            cell.setPaddingBottom(2);
        }
        Cells.add(table, label, fact);
    }

    private PdfPTable summary(PullList list) {
        long looks = list.stops().stream().mapToLong(stop -> stop.undetermined().size()).sum();
        long stops = list.stops().stream().filter(stop -> !stop.containers().isEmpty()).count();
        var text = list.count() > 0
                ? ListWords.count(list.count(), "container", "containers") + " on this list, at "
                        + ListWords.count(stops, "stop.", "stops.")
                : looks > 0 ? "Nothing is known to have to come back." : "Nothing has to come back.";
        if (looks > 0) {
            text += " " + looks + " to look into: whether they must come back cannot be told.";
        }
        if (!list.placeDisputed().isEmpty()) {
            text += " " + list.placeDisputed().size() + " whose place is in dispute.";
        }
        var table = Cells.table(1);
        table.setSpacingBefore(6);
        table.addCell(Cells.bare(phrase(letters.strong(text, 11))));
        return table;
    }

    private PdfPTable actions(PullList list) {
        var found = list.stops().stream().flatMap(stop -> stop.containers().stream()).map(PullList.Pulled::action)
                .distinct().toList();
        var words = new Phrase();
        Arrays.stream(PullList.Action.values()).filter(found::contains).forEach(action -> {
            words.add(letters.strong(ListWords.action(action), 8.5f));
            words.add(letters.text(meaning(action) + "   ", 8.5f));
        });
        var table = Cells.table(1);
        table.setSpacingBefore(3);
        table.addCell(Cells.bare(words));
        return table;
    }

    private static String meaning(PullList.Action action) {
        return switch (action) {
            case SWAP -> ": take it away, leave another of its size.";
            case BRING_IN -> ": take it away as a whole.";
            case WORK_AT_SITE -> ": it stays, the work is done there.";
        };
    }
}
