package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.Tare;
import org.collarbook.registry.stamps.CollarReading;
import org.collarbook.registry.stamps.Stamp;
import org.collarbook.registry.stamps.StampKind;
import org.collarbook.registry.stamps.StampLine;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** What each line of a collar says beside what is recorded of the container. */
record StampComparison(List<Line> lines, List<RequalificationMark> unrecorded) {

    /** The worst last. */
    enum Says {
        AGREES,
        NOT_READ,
        NOT_RECORDED,
        DISPUTED
    }

    /** {@code read} are the readings that are possible, {@code recorded} what the register has of that kind. */
    record Line(int line, String raw, @Nullable StampKind kind, Says says, List<String> read,
            @Nullable String recorded) {

        String sentence() {
            return "Line " + line + ", " + raw
                    + (read.isEmpty()
                            ? " was not read."
                            : " says " + String.join(" or ", read)
                                    + "; recorded is " + (recorded == null ? "nothing." : recorded + "."));
        }
    }

    /** Stamped in another unit, a weight is rounded: half a tenth of a kilogram, and half a percent of a capacity. */
    private static final BigDecimal TARE_ROUNDED = new BigDecimal("0.111");
    private static final BigDecimal CAPACITY_ROUNDED = new BigDecimal("0.005");

    StampComparison {
        lines = List.copyOf(lines);
        unrecorded = List.copyOf(unrecorded);
    }

    static StampComparison of(CollarReading collar, KnownContainer known) {
        var lines = new ArrayList<Line>();
        var unrecorded = new ArrayList<RequalificationMark>();
        for (var line : collar.lines()) {
            var possible = possible(line);
            var says = says(possible, known);
            if (says == Says.NOT_RECORDED) {
                possible.stream().filter(stamp -> stamp instanceof Stamp.Requalified)
                        .forEach(stamp -> unrecorded.add(((Stamp.Requalified) stamp).mark()));
            }
            lines.add(new Line(line.number(), StampLine.whole(line.reading().raw()),
                    possible.isEmpty() ? null : possible.getFirst().kind(), says,
                    possible.stream().map(Object::toString).distinct().toList(),
                    possible.isEmpty() ? null : Recorded.beside(possible.getFirst(), known)));
        }
        return new StampComparison(lines, unrecorded);
    }

    /** Whether the lines can be of this container: what tells it from others with its serial is not contradicted. */
    boolean identifies() {
        return lines.stream().filter(line -> line.says == Says.DISPUTED).map(Line::kind)
                .noneMatch(kind -> kind == StampKind.SPECIFICATION || kind == StampKind.MAKER
                        || kind == StampKind.MANUFACTURED || kind == StampKind.COLLAR || kind == StampKind.SERIAL);
    }

    private static List<Stamp> possible(StampLine line) {
        return switch (line.reading()) {
            case Reading.Read<Stamp>(var _, var stamp, var _) -> List.of(stamp);
            case Reading.Ambiguous<Stamp>(var _, var stamps, var _) -> stamps;
            case Reading.Unreadable<Stamp> _ -> List.of();
        };
    }

    /** A line of several readings agrees when one of them does. */
    private static Says says(List<Stamp> possible, KnownContainer known) {
        var each = possible.stream().map(stamp -> says(stamp, known)).toList();
        return each.isEmpty()
                ? Says.NOT_READ
                : each.contains(Says.AGREES)
                        ? Says.AGREES
                        : each.contains(Says.DISPUTED) ? Says.DISPUTED : Says.NOT_RECORDED;
    }

    private static Says says(Stamp stamp, KnownContainer known) {
        var marks = known.container().marks();
        return switch (stamp) {
            case Stamp.Design(var design) -> beside(design, marks.specification().value());
            case Stamp.Numbered(var serial) -> beside(serial, marks.serial().value());
            case Stamp.MadeBy(var maker) -> beside(maker, marks.maker());
            case Stamp.OriginalTest(var _, var month) -> beside(month, value(marks.manufactured()));
            case Stamp.Tagged(var tag) -> beside(tag, known.container().tag());
            case Stamp.Holds(var capacity) -> capacity(capacity, value(marks.waterCapacity()));
            case Stamp.Weighs(var tare) -> tare(tare, value(marks.tare()));
            case Stamp.Requalified(var mark) -> requalified(mark, known.facts().requalifications());
            case Stamp.WholeCollar(var design, var serial, var maker, var tested) -> Stream
                    .of(beside(design, marks.specification().value()), beside(serial, marks.serial().value()),
                            beside(maker, marks.maker()),
                            tested == null ? Says.AGREES : beside(tested.month(), value(marks.manufactured())))
                    .max(Says::compareTo).orElse(Says.AGREES);
        };
    }

    private static Says beside(Object read, @Nullable Object recorded) {
        return recorded == null ? Says.NOT_RECORDED : read.equals(recorded) ? Says.AGREES : Says.DISPUTED;
    }

    private static Says capacity(WaterCapacity read, @Nullable WaterCapacity recorded) {
        return recorded == null
                ? Says.NOT_RECORDED
                : near(read.toPounds(), recorded.toPounds(),
                        recorded.toPounds().multiply(CAPACITY_ROUNDED));
    }

    private static Says tare(Tare read, @Nullable Tare recorded) {
        return recorded == null ? Says.NOT_RECORDED : near(read.pounds(), recorded.pounds(), TARE_ROUNDED);
    }

    private static Says near(BigDecimal read, BigDecimal recorded, BigDecimal rounded) {
        return read.subtract(recorded).abs().compareTo(rounded) <= 0 ? Says.AGREES : Says.DISPUTED;
    }

    /** Of the same month and method; another requalifier's number on it is a contradiction. */
    private static Says requalified(RequalificationMark mark, @Nullable List<Requalification> history) {
        var worst = Says.AGREES;
        for (var done : mark.requalifications()) {
            var says = (history == null ? Stream.<Requalification>of() : history.stream())
                    .filter(past -> past.month().equals(done.month())
                            && (past.method() == null || done.method() == null || past.method() == done.method()))
                    .map(past -> past.rin() == null || done.rin() == null || Objects.equals(past.rin(), done.rin())
                            ? Says.AGREES
                            : Says.DISPUTED)
                    .min(Says::compareTo).orElse(Says.NOT_RECORDED);
            worst = says.compareTo(worst) > 0 ? says : worst;
        }
        return worst;
    }

    private static <T> @Nullable T value(@Nullable Stamped<T> stamped) {
        return stamped == null ? null : stamped.value();
    }
}
