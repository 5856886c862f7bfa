package org.collarbook.registry.stamps;

import java.time.LocalDate;
import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;
import org.collarbook.regulation.StampedMonth;

/**
 * Specification, serial, maker's symbol, inspector's mark and date below one another, as 49 CFR 178.35(f) shows them.
 * That order tells a serial number of four digits from a month.
 */
final class ThreeLines {

    private static final Pattern SERIAL = Pattern.compile("(?=[A-Z0-9]*\\d)[A-Z0-9]{1,40}");

    private ThreeLines() {}

    /** Empty where the lines do not begin so. */
    static List<Taken> read(List<String> lines, LocalDate asOf) {
        if (lines.size() < 4) {
            return List.of();
        }
        var mark = StampText.of(lines.get(0));
        var serial = StampText.of(lines.get(1));
        var maker = StampText.of(lines.get(2));
        if (lines.stream().limit(4).map(StampText::of).anyMatch(Condemnation::stands)
                || NoSerial.read(serial) != null || !Opening.SPECIFICATION.fits(mark.capitals())
                || !SERIAL.matcher(serial.capitals()).matches()
                || !CollarLine.MAKER_SHAPE.matcher(maker.capitals()).matches()
                || !(Specification.tryParse(mark.raw()) instanceof Parsed<Specification>(var design, var doubts))) {
            return List.of();
        }
        var month = StampedMonth.read(lines.get(3), Collar.of(design, asOf));
        if (month instanceof Reading.Unreadable) {
            return List.of();
        }
        var inspector = Inspector.of(StampText.of(lines.get(3)).capitals());
        return List
                .of(new Taken(StampKind.SPECIFICATION,
                        new Reading.Read<>(mark.raw(), new Stamp.Design(design), doubts)),
                        new Taken(StampKind.SERIAL,
                                new Reading.Read<>(serial.raw(), new Stamp.Numbered(Serial.parse(serial
                                        .capitals())), serial.warnings())),
                        new Taken(StampKind.MAKER,
                                new Reading.Read<>(maker.raw(), new Stamp.MadeBy(MakerSymbol.parse(maker
                                        .capitals())), maker.warnings())),
                        new Taken(StampKind.MANUFACTURED, month.map(one -> new Stamp.OriginalTest(inspector, one))));
    }
}
