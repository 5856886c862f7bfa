package org.collarbook.registry.stamps;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.collarbook.registry.Capacities;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tare;
import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/**
 * The three lines of a UN pressure receptacle, UN Model Regulations 6.2.2.7 with the example there: manufacturing marks
 * ({@code 25E D MF 765432 H}), operational marks ({@code PW200 PH300BAR 62.1KG 50L 5.8MM}) and certification marks
 * ({@code ISO 9809-1 F IB 2000/12}, behind the UN symbol).
 */
final class UnitedNations {

    private static final Pattern MANUFACTURING = Pattern.compile("(\\d{2}[EPST]) ([A-Z]{1,3}) ([A-Z][A-Z0-9]{0,5}) "
            + "((?=[A-Z0-9]*\\d)[A-Z0-9]{1,40})( H)?");
    private static final String NUMBER = "(\\d{1,7}(?:\\.\\d{1,6})?)";
    private static final Pattern PART = Pattern.compile("(?:^|[ /]+)(?:(P[HW]) ?" + NUMBER + "(?: ?BAR)?|" + NUMBER
            + " ?(KG|L|MM))(?=[ /]|$)");
    private static final Pattern CERTIFICATION = Pattern.compile("(ISO)[ -]*(\\d{3,5}(?:-\\d)?)(?: (.+))?");

    private final StampText text;
    private final String capitals;
    private final Collar collar;

    UnitedNations(StampText text, Collar collar) {
        this.text = text;
        this.capitals = text.capitals();
        this.collar = collar;
    }

    /** Null where the line is none of the three. */
    @Nullable
    Taken read(DateLines dates) {
        var manufacturing = MANUFACTURING.matcher(capitals);
        var certification = CERTIFICATION.matcher(capitals);
        return manufacturing.matches()
                ? manufactured(manufacturing)
                : certification.matches() ? certified(certification, dates) : operational();
    }

    private Taken manufactured(Matcher line) {
        return new Joined(text).add(new Stamp.MadeBy(MakerSymbol.parse(line.group(3)))).add(new Stamp.Numbered(Serial
                .parse(line.group(4)))).warn("read as the manufacturing marks of a UN receptacle: thread " + line.group(
                        1) + " and country " + line.group(2) + " are not kept")
                .taken();
    }

    private @Nullable Taken operational() {
        var part = PART.matcher(capitals);
        var joined = new Joined(text);
        boolean pressed = false;
        int end = 0;
        while (part.find() && part.start() == end) {
            pressed |= part.group(1) != null;
            add(joined, part);
            end = part.end();
        }
        return pressed && end == capitals.length() ? joined.taken() : null;
    }

    /** The mass is that of the empty receptacle without its valve, 6.2.2.7.3 (g) from memory. */
    private void add(Joined joined, Matcher part) {
        if (part.group(1) != null) {
            joined.add(new Stamp.Pressed(part.group(1).equals("PH"), part.group(2)));
            return;
        }
        int start = part.start(3);
        var told = capitals.substring(start, part.end());
        switch (part.group(4)) {
            case "KG" -> joined.add(Tare.read(told, collar).map(tare -> Stamp.Weighs.of(tare, told)), start)
                    .warn("the mass marked is read as the tare; it leaves out valve and valve guard");
            case "L" -> joined.add(Capacities.read(told, collar).map(Stamp.Holds::new), start);
            default -> joined.warn(told + ", perhaps the least wall thickness, is not kept");
        }
    }

    /** The standard makes a UN mark only where the symbol stands before it. */
    private Taken certified(Matcher line, DateLines dates) {
        var standard = line.group(1) + " " + line.group(2);
        boolean un = collar.isUnder(Authority.UN);
        var joined = new Joined(text);
        if (un) {
            joined.add(new Stamp.Design(Specification.parse("UN " + standard)));
        }
        if (line.group(3) != null) {
            var date = dates.read(StampText.of(line.group(3)), collar.specification());
            joined.add(date.reading(), line.start(3));
        } else if (!un) {
            return new Taken(StampKind.SPECIFICATION, text.unreadable(0, "UN before " + standard + ", if its symbol"
                    + " stands there: the standard alone names no specification"));
        }
        return (un
                ? joined
                : joined.warn(standard + " is a design standard; without the UN symbol before it, it names no"
                        + " specification"))
                .taken();
    }
}
