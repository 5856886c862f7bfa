package org.collarbook.registry.stamps;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;
import org.collarbook.regulation.StampedMonth;
import org.jspecify.annotations.Nullable;

/** Dates in their order: the first bare month is that of the original test, whatever follows is a requalification. */
final class DateLines {

    private static final Pattern RUN_TOGETHER = Pattern.compile("\\d{4,6}");
    private static final Pattern LETTERS = Pattern.compile("(?s).*[A-Z].*");

    private final Collar known;
    private final Gathered gathered;
    private boolean ambiguousTest;

    DateLines(Collar known, Gathered gathered) {
        this.known = known;
        this.gathered = gathered;
    }

    private @Nullable YearMonth manufactured() {
        return known.manufactured() == null ? gathered.original() : known.manufactured();
    }

    private boolean isTested() {
        return ambiguousTest || manufactured() != null;
    }

    Taken read(StampText text, @Nullable Specification specification) {
        var month = StampedMonth.read(text.raw(), Collar.of(specification, known.asOf()));
        if (isOriginal(month)) {
            ambiguousTest = month instanceof Ambiguous<YearMonth>;
            return new Taken(StampKind.MANUFACTURED, original(text, month, specification));
        }
        var mark = RequalificationMark.read(text.raw(), new Collar(specification, manufactured(), gathered.previous(),
                known.asOf()));
        if (!isTested() && month instanceof Unreadable<YearMonth> one
                && mark instanceof Unreadable<RequalificationMark> other && one.index() <= other.index()
                && !LETTERS.matcher(text.capitals()).matches()) {
            return new Taken(StampKind.MANUFACTURED, month.map(never -> new Stamp.OriginalTest(null, never)));
        }
        return new Taken(StampKind.REQUALIFICATION, doubted(text, mark.map(Stamp.Requalified::new), List.of()));
    }

    private boolean isOriginal(Reading<YearMonth> month) {
        var previous = gathered.previous();
        return switch (month) {
            case Read<YearMonth>(var _, var one, var _) -> one.equals(manufactured())
                    || !isTested() && (previous == null || !one.isAfter(previous));
            case Ambiguous<YearMonth> _ -> !isTested();
            case Unreadable<YearMonth> _ -> false;
        };
    }

    private static Reading<Stamp> original(StampText text, Reading<YearMonth> month,
            @Nullable Specification specification) {
        var inspector = Inspector.of(text.capitals());
        var reading = month.<Stamp>map(one -> new Stamp.OriginalTest(inspector, one));
        return doubted(text, reading, specification == null
                ? List.of("no specification stands before it; taken for the month of the original test")
                : List.of());
    }

    private static Reading<Stamp> doubted(StampText text, Reading<Stamp> reading, List<String> more) {
        if (!(reading instanceof Read<Stamp>(var raw, var stamp, var doubts))) {
            return reading;
        }
        var warnings = new ArrayList<>(doubts);
        warnings.addAll(more);
        if (RUN_TOGETHER.matcher(text.capitals()).matches()) {
            warnings.add("digits run together are read as a month; they may also be a serial number");
        }
        return new Read<>(raw, stamp, warnings);
    }
}
