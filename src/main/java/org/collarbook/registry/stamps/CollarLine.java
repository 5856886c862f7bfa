package org.collarbook.registry.stamps;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;
import org.collarbook.regulation.StampedMonth;
import org.jspecify.annotations.Nullable;

/**
 * Specification, serial, maker's symbol and original test on one line, in the two forms of 49 CFR 178.35(f):
 * {@code DOT-3A1800-1234-XY AB 5-95} and {@code DOT-3A1800 / 1234 / XY / AB 5-95}, where later marks may follow; or
 * specification and date alone.
 */
final class CollarLine {

    private static final String SERIAL = "(?=[A-Z0-9-]*\\d)[A-Z0-9][A-Z0-9-]{0,39}";
    static final Pattern SERIAL_SHAPE = Pattern.compile(SERIAL);
    static final Pattern MAKER_SHAPE = Pattern.compile("[A-Z][A-Z0-9]{0,5}");
    private static final Pattern DASHED = Pattern.compile("(\\S+)-((?=[A-Z0-9]*\\d)[A-Z0-9]{1,40})-([A-Z][A-Z0-9]{0,5})"
            + "(?: (.+))?");
    private static final String SLASH = " / ";

    private final StampText text;
    private final String capitals;
    private final LocalDate asOf;
    private final DateLines dates;

    CollarLine(StampText text, LocalDate asOf, DateLines dates) {
        this.text = text;
        this.capitals = text.capitals();
        this.asOf = asOf;
        this.dates = dates;
    }

    /** Null where the line has no such form. */
    @Nullable
    Taken read() {
        var parts = List.of(capitals.split(SLASH, -1));
        for (int marks = 2; marks > 0; marks--) {
            var taken = parts.size() >= marks + 2 ? slashed(parts, marks) : null;
            if (taken != null) {
                return taken;
            }
        }
        var dashed = dashed();
        return dashed == null ? spaced() : dashed;
    }

    private @Nullable Taken slashed(List<String> parts, int marks) {
        var specification = String.join(SLASH, parts.subList(0, marks));
        var serial = parts.get(marks);
        var maker = parts.get(marks + 1);
        return SERIAL_SHAPE.matcher(serial).matches() && MAKER_SHAPE.matcher(maker).matches()
                ? whole(specification, serial, maker, parts.subList(marks + 2, parts.size()))
                : null;
    }

    /** Where the number before the maker's symbol may be the pressure of the specification, it is no serial. */
    private @Nullable Taken dashed() {
        var shape = DASHED.matcher(capitals);
        if (!shape.matches()
                || Specification.tryParse(shape.group(1) + "-" + shape.group(2)) instanceof Parsed<Specification>) {
            return null;
        }
        return whole(shape.group(1), shape.group(2), shape.group(3), shape.group(4) == null
                ? List.of()
                : List.of(shape.group(4)));
    }

    /** Specification and date with a space between; the longest specification that leaves a date. */
    private @Nullable Taken spaced() {
        for (int space = capitals.lastIndexOf(' '); space > 0; space = capitals.lastIndexOf(' ', space - 1)) {
            var date = capitals.substring(space + 1);
            if (Opening.of(date) == Opening.DATE && Specification.tryParse(capitals.substring(0,
                    space)) instanceof Parsed<Specification>(var design, var doubts)) {
                return joined(design, doubts).add(dates.read(StampText.of(date), design).reading(), space + 1).taken();
            }
        }
        return null;
    }

    private Joined joined(Specification design, List<String> doubts) {
        return new Joined(text).add(new Reading.Read<>(text.raw(), new Stamp.Design(design), doubts), 0);
    }

    /** The first of the dates is that of the original test, the others are requalifications. */
    private @Nullable Taken whole(String mark, String serial, String maker, List<String> stamped) {
        if (!(Specification.tryParse(mark) instanceof Parsed<Specification>(var design, var doubts))) {
            return null;
        }
        var joined = joined(design, doubts).add(new Stamp.Numbered(Serial.parse(serial))).add(new Stamp.MadeBy(
                MakerSymbol.parse(maker)));
        if (!stamped.isEmpty()) {
            add(joined, stamped, design);
        }
        return joined.taken();
    }

    private void add(Joined joined, List<String> stamped, Specification design) {
        int start = capitals.length() - String.join(SLASH, stamped).length();
        var first = stamped.getFirst();
        var month = StampedMonth.read(first, Collar.of(design, asOf));
        var inspector = Inspector.of(first);
        joined.add(month.map(one -> new Stamp.OriginalTest(inspector, one)), start);
        var tested = month instanceof Reading.Read<YearMonth>(var _, var one, var _) ? one : null;
        var collar = Collar.of(design, tested, asOf);
        start += first.length() + SLASH.length();
        for (var later : stamped.subList(1, stamped.size())) {
            var done = RequalificationMark.read(later, collar);
            joined.add(done.map(Stamp.Requalified::new), start);
            if (done instanceof Reading.Read<RequalificationMark>(var _, var mark, var _)) {
                collar = new Collar(design, tested, mark.month(), asOf);
            }
            start += later.length() + SLASH.length();
        }
    }
}
