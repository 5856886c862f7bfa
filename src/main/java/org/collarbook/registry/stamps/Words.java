package org.collarbook.registry.stamps;

import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;

/** Serial numbers, makers' symbols, and designs without an authority: nothing but their place tells them apart. */
final class Words {

    private static final Pattern SERIAL_LABEL = Pattern
            .compile("(?:S ?/ ?N|SN|SER(?:IAL)?)(?:\\.? ?(?:NO|NUMBER)(?![A-Z0-9])\\.?| ?#|\\.)? ?:? ?");
    private static final Pattern LIKE_A_DESIGN = Pattern.compile("[34][A-Z]{1,3}[ -]?\\d{2,}.*");
    private static final Pattern LETTERS = Pattern.compile("[A-Z]{1,6}");

    private Words() {}

    static Reading<Stamp> labelled(StampText text) {
        var capitals = text.capitals();
        var label = SERIAL_LABEL.matcher(capitals);
        int start = label.lookingAt() ? label.end() : 0;
        return switch (Serial.tryParse(capitals.substring(start))) {
            case Parsed<Serial>(var serial, var _) -> new Reading.Read<>(text.raw(), new Stamp.Numbered(serial),
                    text.warnings());
            case Rejected<Serial>(int index, var _, var expected) -> text.unreadable(start + index, expected);
        };
    }

    static Taken read(StampText text, Collar collar, Gathered gathered, DateLines dates) {
        var capitals = text.capitals();
        boolean designKnown = collar.specification() != null;
        if (!designKnown) {
            var design = Specification.tryParse(text.raw());
            if (design instanceof Parsed<Specification> || LIKE_A_DESIGN.matcher(capitals).matches()) {
                return design(text, design, new CollarLine(text, collar.asOf(), dates));
            }
        }
        var other = NoSerial.read(text);
        if (other != null) {
            return other;
        }
        if (CollarLine.SERIAL_SHAPE.matcher(capitals).matches()) {
            return new Taken(StampKind.SERIAL, doubted(text, new Stamp.Numbered(Serial.parse(capitals)),
                    "nothing beside it says that it is the serial number"));
        }
        boolean place = designKnown || gathered.has(StampKind.SERIAL);
        if (place && !gathered.has(StampKind.MAKER) && LETTERS.matcher(capitals).matches()) {
            return new Taken(StampKind.MAKER, doubted(text, new Stamp.MadeBy(MakerSymbol.parse(capitals)),
                    "nothing beside it says that it is the maker's symbol"));
        }
        return new Taken(null, text.unreadable(0, StampReader.EXPECTED));
    }

    private static Taken design(StampText text, ParseResult<Specification> design, CollarLine line) {
        var whole = design instanceof Parsed<Specification> ? null : line.read();
        return whole != null
                ? whole
                : new Taken(StampKind.SPECIFICATION, Reading.of(text.raw(), design).map(Stamp.Design::new));
    }

    private static Reading<Stamp> doubted(StampText text, Stamp stamp, String doubt) {
        var warnings = text.warnings();
        warnings.add(doubt);
        return new Reading.Read<>(text.raw(), stamp, List.copyOf(warnings));
    }
}
