package org.collarbook.registry.stamps;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;
import org.collarbook.regulation.StampedMonth;
import org.jspecify.annotations.Nullable;

/**
 * Specification, serial, maker's symbol and original test on one line, in the two forms of 49 CFR 178.35(f):
 * {@code DOT-3A1800-1234-XY AB 5-95} and {@code DOT-3A1800 / 1234 / XY / AB 5-95}.
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

    CollarLine(StampText text, LocalDate asOf) {
        this.text = text;
        this.capitals = text.capitals();
        this.asOf = asOf;
    }

    /** Null where the line has neither form. */
    @Nullable
    Reading<Stamp> read() {
        var parts = List.of(capitals.split(SLASH, -1));
        for (int marks = 2; marks > 0; marks--) {
            int rest = parts.size() - marks;
            var reading = rest == 2 || rest == 3 ? slashed(parts, marks) : null;
            if (reading != null) {
                return reading;
            }
        }
        return dashed();
    }

    private @Nullable Reading<Stamp> slashed(List<String> parts, int marks) {
        var specification = String.join(SLASH, parts.subList(0, marks));
        var serial = parts.get(marks);
        var maker = parts.get(marks + 1);
        if (!SERIAL_SHAPE.matcher(serial).matches() || !MAKER_SHAPE.matcher(maker).matches()) {
            return null;
        }
        var date = parts.size() > marks + 2 ? parts.get(marks + 2) : null;
        return whole(specification, serial, maker, date);
    }

    /** Where the number before the maker's symbol may be the pressure of the specification, it is no serial. */
    private @Nullable Reading<Stamp> dashed() {
        var shape = DASHED.matcher(capitals);
        if (!shape.matches()
                || Specification.tryParse(shape.group(1) + "-" + shape.group(2)) instanceof Parsed<Specification>) {
            return null;
        }
        return whole(shape.group(1), shape.group(2), shape.group(3), shape.group(4));
    }

    private @Nullable Reading<Stamp> whole(String mark, String serial, String maker, @Nullable String date) {
        if (!(Specification.tryParse(mark) instanceof Parsed<Specification>(var specification, var doubts))) {
            return null;
        }
        var warnings = new ArrayList<>(text.warnings());
        warnings.addAll(doubts);
        var number = Serial.parse(serial);
        var symbol = MakerSymbol.parse(maker);
        if (date == null) {
            return new Reading.Read<>(text.raw(), new Stamp.WholeCollar(specification, number, symbol, null), warnings);
        }
        var month = StampedMonth.read(date, Collar.of(specification, asOf));
        if (month instanceof Reading.Read<?>(var _, var _, var more)) {
            warnings.addAll(more);
        }
        var inspector = Inspector.of(date);
        return located(month.map(one -> new Stamp.WholeCollar(specification, number, symbol,
                new Stamp.OriginalTest(inspector, one))), warnings, capitals.length() - date.length());
    }

    /** The reading of the date at the end, told of the whole line. */
    private Reading<Stamp> located(Reading<Stamp> reading, List<String> warnings, int start) {
        return switch (reading) {
            case Reading.Read<Stamp> read -> new Reading.Read<>(text.raw(), read.value(), warnings);
            case Reading.Ambiguous<Stamp> several -> new Reading.Ambiguous<>(text.raw(), several.readings(), several
                    .because());
            case Reading.Unreadable<Stamp> unreadable -> text.unreadable(unreadable.fault(), start + unreadable.index(),
                    unreadable.expected());
        };
    }
}
