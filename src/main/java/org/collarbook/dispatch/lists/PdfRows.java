package org.collarbook.dispatch.lists;

import static org.collarbook.platform.paper.Cells.phrase;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.platform.paper.Letters;
import org.collarbook.platform.paper.Cells;
import org.jspecify.annotations.Nullable;

import com.lowagie.text.pdf.PdfPCell;

/** One container, one row: the box to tick, the code to scan, what it is, when it is due, what to do with it and why. */
final class PdfRows {

    static final float[] WIDTHS = {28, 57, 140, 100, 215};
    static final float SMALL = 8.5f;

    /** Out of service, whatever the date: they are seen at a glance, and without colour. */
    private static final Set<String> FRAMED = Set.of("ON_HOLD", "REJECTED", "CONDEMNED");

    private static final DateTimeFormatter SINCE = DateTimeFormatter.ofPattern("MMM d, uuuu, HH:mm 'UTC'",
            Locale.US).withZone(ZoneOffset.UTC);

    private final Letters letters;

    PdfRows(Letters letters) {
        this.letters = letters;
    }

    PdfPCell[] pulled(PullList.Pulled one) {
        var made = ", made " + ListWords.month(one.manufactured());
        var row = row(one.id(), one.tag(), container(one.serial(), one.tag(), one.size(),
                kind(one.kind()) + one.specification(), maker(one.maker()) + made), due(one), reason(one));
        if (FRAMED.contains(one.status())) {
            Cells.frame(row);
        }
        return row;
    }

    /** With room to write beside each fact that is missing. */
    PdfPCell[] toLookInto(PullList.ToLookInto one) {
        var missing = one.missing().stream().map(what -> what + "  ____________________")
                .collect(Collectors.joining("\n"));
        var cell = wide(missing);
        cell.setLeading(2, 1.5f);
        return row(one.id(), one.tag(), container(one.serial(), one.tag(), one.size(),
                kind(one.kind()) + one.specification(), maker(one.maker())), cell);
    }

    /** With a place to tick beside each site that claims it. */
    PdfPCell[] disputed(PullList.Disputed one) {
        var claims = one.claims().stream()
                .map(claim -> "(    )  " + ListWords.named(claim.site())
                        + (claim.recorded() ? ", moved there " : ", seen there first ")
                        + SINCE.format(claim.since()))
                .collect(Collectors.joining("\n"));
        var stands = one.status() == null
                ? ListWords.UNKNOWN
                : one.status().replace('_', ' ') + (one.due() == null ? "" : ", due " + ListWords.month(one.due()));
        return row(one.id(), one.tag(), container(one.serial(), one.tag(), one.size(), one.specification(),
                maker(one.maker())), wide(claims + "\n" + stands + "\nLook: " + String.join(" ", one.check())));
    }

    private PdfPCell wide(String text) {
        var cell = Cells.cell(phrase(letters.text(text, SMALL + 0.5f)));
        cell.setColspan(2);
        return cell;
    }

    private static String kind(String kind) {
        return kind.equals("CYLINDER") ? "" : ListWords.plain(kind) + " ";
    }

    private PdfPCell[] row(UUID id, @Nullable String tag, PdfPCell... rest) {
        return Stream.concat(Stream.of(Cells.drawn(PdfMarks.box(), PdfMarks.CODE + 4),
                Cells.drawn(PdfMarks.code(tag, id), PdfMarks.CODE + 4)), Stream.of(rest)).toArray(PdfPCell[]::new);
    }

    private PdfPCell container(String serial, @Nullable String tag, String size, String kind, String maker) {
        return Cells.cell(phrase(letters.strong(serial, 14), letters.strong("\n" + size, SMALL + 1.5f),
                letters.text(
                        "  " + kind + "\n" + maker + "\n"
                                + (tag == null ? "no tag: the code has its id" : "tag " + tag),
                        SMALL)));
    }

    private static String maker(@Nullable String maker) {
        return "maker " + (maker == null ? ListWords.UNKNOWN : maker);
    }

    private PdfPCell due(PullList.Pulled one) {
        var status = letters.strong(one.status().replace('_', ' '), FRAMED.contains(one.status()) ? 12 : 9);
        return Cells.cell(phrase(status, letters.text("\n" + requirement(one) + "\ndue ", SMALL),
                letters.strong(ListWords.month(one.due()), SMALL + 1.5f),
                letters.text("\nlast day " + ListWords.date(one.lastDay()), SMALL)));
    }

    private static String requirement(PullList.Pulled one) {
        return ListWords.plain(one.requirement()) + (one.jurisdiction() == null ? "" : " (" + one.jurisdiction() + ")");
    }

    private PdfPCell reason(PullList.Pulled one) {
        var why = one.reason();
        var words = phrase(letters.strong(ListWords.action(one.action()), 10.5f),
                letters.text("\n" + why.text(), SMALL));
        var citation = why.citation();
        if (citation != null) {
            words.add(letters.text(" (" + citation.instrument() + " " + citation.section() + ")", SMALL));
        }
        if (!one.check().isEmpty()) {
            words.add(letters.strong("\nLook: ", SMALL));
            words.add(letters.text(String.join(" ", one.check()), SMALL));
        }
        return Cells.cell(words);
    }
}
