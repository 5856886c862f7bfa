package org.collarbook.schedule;

import java.io.IOException;
import java.io.OutputStream;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.AsKnown;
import org.collarbook.custody.NamedPlace.Kind;
import org.collarbook.custody.Places;
import org.collarbook.platform.Problem;
import org.collarbook.schedule.packet.PacketWords;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;

/** Gathers the lines of a month for a sheet that somebody prints. */
@Component
class MonthOnPaper {

    static final int MOST = 3000;

    private static final Comparator<ScheduleRow> BY_SITE = Comparator
            .comparing(ScheduleRow::site, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(ScheduleRow::size).thenComparing(ScheduleRow::serial)
            .thenComparing(ScheduleRow::containerId).thenComparing(ScheduleRow::requirement);

    private final ScheduleRows rows;
    private final AsKnown asKnown;

    private final Places places;

    MonthOnPaper(ScheduleRows rows, AsKnown asKnown, Places places) {
        this.places = places;
        this.rows = rows;
        this.asKnown = asKnown;
    }

    /** What the sheet is about. */
    record About(YearMonth month, @Nullable Replay replay, UUID madeBy) {}

    /** The stream is opened when nothing is refused any more. */
    interface Out {

        OutputStream open() throws IOException;
    }

    long write(Source source, ScheduleFilter filter, About about, Out out) throws IOException {
        var lines = new ArrayList<ScheduleRow>();
        rows.each(source, filter, row -> {
            if (lines.size() == MOST) {
                throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "LIST_TOO_LONG", "More than " + MOST
                        + " lines fall due in " + about.month() + ": ask site by site, customer by customer or route by"
                        + " route, or for format=xlsx.").with("most", MOST).asException();
            }
            lines.add(row);
        });
        lines.sort(BY_SITE);
        var moment = source.now().toInstant();
        var book = asKnown.book(about.replay() == null ? moment : about.replay().knownAt()).rules();
        SchedulePdf.write(about, asked(filter), moment, book, lines, out.open());
        return lines.size();
    }

    /** What narrows the containers; places by their codes and names of now. */
    private List<String> asked(ScheduleFilter filter) {
        var asked = new ArrayList<String>();
        place(asked, Kind.SITE, filter.site());
        place(asked, Kind.CUSTOMER, filter.customer());
        place(asked, Kind.ROUTE, filter.route());
        var words = new LinkedHashMap<String, @Nullable Object>();
        words.put("kind", filter.kind());
        words.put("size", filter.containerSize());
        words.put("specification", filter.specification());
        words.put("requirement", filter.requirement());
        words.put("status", filter.status());
        words.put("owner", filter.owner());
        words.forEach((name, value) -> {
            if (value != null) {
                asked.add(name + " " + value);
            }
        });
        return asked;
    }

    private void place(List<String> asked, Kind kind, @Nullable UUID id) {
        if (id != null) {
            var place = places.named(kind, id.toString()).orElseThrow();
            asked.add(PacketWords.plain(kind) + " " + place.code() + ", " + place.name());
        }
    }
}
