package org.collarbook.registry.stamps;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.collarbook.registry.Capacities;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/** Takes line after line for what it can be, each in the light of those before it. */
final class StampReader {

    static final String EXPECTED = "a specification, a date or requalification mark, WC, TW, a GS1 tag, or a"
            + " serial number such as S/N 1234";

    private final DateLines dates;
    private final Gathered gathered = new Gathered();
    private final Collar known;
    private Collar collar;

    StampReader(Collar known) {
        this.known = known;
        this.collar = known;
        this.dates = new DateLines(known, gathered);
    }

    CollarReading read(List<String> lines) {
        var read = new ArrayList<StampLine>();
        for (int i = 0; i < lines.size(); i++) {
            var taken = ThreeLines.read(lines.subList(i, lines.size()), collar.asOf());
            var next = taken.isEmpty() ? List.of(line(StampText.of(lines.get(i)))) : taken;
            for (var line : next) {
                var reading = line.reading() instanceof Reading.Read<Stamp> one ? noted(one) : line.reading();
                read.add(new StampLine(read.size() + 1, line.kind(), reading));
            }
            i += next.size() - 1;
        }
        return new CollarReading(List.copyOf(read), gathered.marks());
    }

    /** A line and what it was taken for, before it has its number. */
    record Taken(@Nullable StampKind kind, Reading<Stamp> reading) {}

    private Reading<Stamp> noted(Reading.Read<Stamp> read) {
        var warnings = new ArrayList<>(read.warnings());
        var contradicted = gathered.add(read.value());
        if (!contradicted.isEmpty()) {
            warnings.add("another line says otherwise: " + contradicted.stream().map(kind -> kind.name()
                    .toLowerCase(Locale.ROOT).replace('_', ' ')).collect(Collectors.joining(", ")));
        }
        collar = known.specification() == null ? Collar.of(gathered.design(), collar.asOf()) : collar;
        return new Reading.Read<>(read.raw(), read.value(), warnings);
    }

    private Taken line(StampText text) {
        var capitals = text.capitals();
        if (capitals.isEmpty()) {
            return new Taken(null, text.unreadable(0, EXPECTED));
        }
        var marked = Condemnation.read(text);
        var scanned = marked == null ? ScannedTag.read(text) : marked;
        var united = scanned == null ? new UnitedNations(text, collar).read(dates) : scanned;
        return united == null ? line(text, capitals) : united;
    }

    private Taken line(StampText text, String capitals) {
        return switch (Opening.of(capitals)) {
            case TAG -> new Taken(StampKind.TAG, tag(text));
            case CAPACITY -> new Taken(StampKind.WATER_CAPACITY, Capacities.read(text.raw(), collar)
                    .map(Stamp.Holds::new));
            case TARE -> new Taken(StampKind.TARE, tare(text));
            case WEIGHT -> weight(text);
            case SERIAL -> new Taken(StampKind.SERIAL, Words.labelled(text));
            case SPECIFICATION -> design(text, capitals);
            case DATE -> date(text, capitals);
            case WORD -> Words.read(text, collar, gathered, dates);
        };
    }

    private static Reading<Stamp> tag(StampText text) {
        return switch (Tag.tryParse(text.plain())) {
            case Parsed<Tag>(var tag, var _) -> new Reading.Read<>(text.raw(), new Stamp.Tagged(tag), text.warnings());
            case Rejected<Tag>(int index, var _, var expected) -> text.unreadable(index, expected);
        };
    }

    /** Where metric units are the custom, a bare tare may be either; common practice, no source, as with "WC". */
    private Reading<Stamp> tare(StampText text) {
        var reading = Tare.read(text.raw(), collar).<Stamp>map(tare -> Stamp.Weighs.of(tare, text.raw()));
        var bare = Tare.withoutUnit(text.raw());
        if (bare == null || !collar.isUnder(Authority.TC, Authority.UN, Authority.ADR)
                || !(reading instanceof Reading.Read<Stamp> pounds)
                || !(Tare.tryParse(bare.toPlainString() + " kg") instanceof Parsed<Tare>(var kilograms, var _))) {
            return reading;
        }
        return new Reading.Ambiguous<>(text.raw(), List.of(pounds.value(), new Stamp.Weighs(kilograms, bare)),
                "no unit is stamped");
    }

    /** On UN and ADR containers a weight in kilograms is the mass when empty, 6.2.2.7.2 and the example there. */
    private Taken weight(StampText text) {
        var tare = Tare.read(text.raw(), collar).<Stamp>map(one -> Stamp.Weighs.of(one, text.raw()));
        var capacity = Capacities.read(text.raw(), collar).<Stamp>map(Stamp.Holds::new);
        if (collar.isUnder(Authority.UN, Authority.ADR)
                || !(tare instanceof Reading.Read<Stamp> one)
                || !(capacity instanceof Reading.Read<Stamp> other)) {
            return new Taken(StampKind.TARE, tare);
        }
        return new Taken(null, new Reading.Ambiguous<>(text.raw(), List.of(other.value(), one.value()),
                "neither WC nor TW stands beside it"));
    }

    private Taken design(StampText text, String capitals) {
        var reading = Reading.of(text.raw(), Specification.tryParse(text.raw())).<Stamp>map(Stamp.Design::new);
        if (reading instanceof Reading.Unreadable<Stamp>) {
            var whole = new CollarLine(text, collar.asOf(), dates).read();
            if (whole != null) {
                return whole;
            }
            if (Opening.DATE.fits(capitals)) {
                return dates.read(text, collar.specification());
            }
        }
        return new Taken(StampKind.SPECIFICATION, reading);
    }

    private Taken date(StampText text, String capitals) {
        var taken = dates.read(text, collar.specification());
        if (!(taken.reading() instanceof Reading.Unreadable<Stamp>)) {
            return taken;
        }
        boolean weak = collar.specification() == null
                && Specification.tryParse(text.raw()) instanceof Parsed<Specification>;
        boolean bare = collar.specification() != null && !gathered.has(StampKind.SERIAL)
                && CollarLine.SERIAL_SHAPE.matcher(capitals).matches() && capitals.indexOf('-') < 0;
        return weak ? design(text, capitals) : bare ? Words.read(text, collar, gathered, dates) : taken;
    }
}
