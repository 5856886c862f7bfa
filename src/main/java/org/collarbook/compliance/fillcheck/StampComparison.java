package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.registry.ServicePressure;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.Tare;
import org.collarbook.registry.stamps.CollarReading;
import org.collarbook.registry.stamps.Stamp;
import org.collarbook.registry.stamps.StampKind;
import org.collarbook.registry.stamps.StampLine;
import org.collarbook.regulation.Citation;
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

    /** {@code citation} is of what the line orders by itself; {@code read} are the readings that are possible, {@code recorded} what the register has of that kind. */
    record Line(int line, String raw, @Nullable StampKind kind, Says says, List<String> read,
            @Nullable String recorded, @Nullable Citation citation) {

        String sentence() {
            return "Line " + line + ", " + raw
                    + (read.isEmpty()
                            ? " was not read: it may say that the container is not to be filled. Write one mark a line, as it"
                                    + " is stamped, and leave out what is no mark."
                            : " says " + String.join(" or ", read)
                                    + "; recorded is " + (recorded == null ? "nothing." : recorded + "."));
        }
    }

    /** Stamped in another unit, a weight is rounded: half a tenth of a kilogram, and half a percent of a capacity. */
    private static final BigDecimal TARE_ROUNDED = new BigDecimal("0.111");
    private static final BigDecimal CAPACITY_ROUNDED = new BigDecimal("0.005");
    /** Half a bar. */
    private static final BigDecimal PRESSURE_ROUNDED = new BigDecimal("7.26");
    private static final BigDecimal PSI_IN_A_BAR = new BigDecimal("14.50377");

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
                possible.stream().flatMap(StampComparison::parts).filter(part -> says(part, known) == says)
                        .filter(Stamp.Requalified.class::isInstance).map(Stamp.Requalified.class::cast)
                        .forEach(requalified -> unrecorded.add(requalified.mark()));
            }
            lines.add(new Line(line.number(), StampLine.whole(line.reading().raw()),
                    possible.isEmpty() ? null : possible.getFirst().kind(), says,
                    possible.stream().map(Object::toString).distinct().toList(),
                    possible.isEmpty() ? null : Recorded.beside(possible.getFirst(), known),
                    OutOfService.citation(possible)));
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

    static Stream<Stamp> parts(Stamp stamp) {
        return stamp instanceof Stamp.Together(var parts) ? parts.stream() : Stream.of(stamp);
    }

    /** A line of several readings agrees when one of them does, but for one that may say it is out of service. */
    private static Says says(List<Stamp> possible, KnownContainer known) {
        var each = possible.stream().map(stamp -> says(stamp, known)).toList();
        if (possible.stream().flatMap(StampComparison::parts)
                .anyMatch(part -> OutOfService.says(part) && says(part, known) == Says.DISPUTED)) {
            return Says.DISPUTED;
        }
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
            case Stamp.Weighs(var tare, var _) -> tare(tare, value(marks.tare()));
            case Stamp.Requalified(var mark) -> requalified(mark, known.facts().requalifications());
            case Stamp.Pressed(boolean test, var bar) -> test
                    ? Says.NOT_RECORDED
                    : pressure(new BigDecimal(bar), marks.servicePressure());
            case Stamp.Condemned _,Stamp.Rejected _ -> OutOfService.isRecorded(stamp, known)
                    ? Says.AGREES
                    : Says.DISPUTED;
            case Stamp.Together(var parts) -> parts.stream().map(part -> says(part, known)).max(Says::compareTo)
                    .orElse(Says.AGREES);
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

    private static Says pressure(BigDecimal bar, @Nullable ServicePressure recorded) {
        return recorded == null
                ? Says.NOT_RECORDED
                : near(bar.multiply(PSI_IN_A_BAR), BigDecimal.valueOf(recorded.psig()), PRESSURE_ROUNDED);
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
