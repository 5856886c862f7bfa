package org.collarbook.registry.stamps;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** Gathers what lines say of one container. */
final class Gathered {

    private final Map<StampKind, Stamp> said = new EnumMap<>(StampKind.class);
    private final Set<StampKind> disputed = EnumSet.noneOf(StampKind.class);
    private final List<RequalificationMark> requalifications = new ArrayList<>();

    /** The kinds of what another line has said otherwise. */
    Set<StampKind> add(Stamp stamp) {
        var contradicted = EnumSet.noneOf(StampKind.class);
        switch (stamp) {
            case Stamp.Requalified(var mark) -> requalifications.add(mark);
            case Stamp.Together(var parts) -> parts.forEach(part -> contradicted.addAll(add(part)));
            case Stamp.Condemned _,Stamp.Rejected _ -> said.putIfAbsent(stamp.kind(), stamp);
            case Stamp.Design _,Stamp.OriginalTest _,Stamp.Holds _,Stamp.Weighs _,Stamp.Tagged _,Stamp.Numbered _,Stamp.MadeBy _,Stamp.Pressed _ -> {
                var before = said.get(stamp.kind());
                var agreed = before == null ? stamp : Agreement.of(before, stamp);
                if (agreed == null) {
                    disputed.add(stamp.kind());
                    contradicted.add(stamp.kind());
                } else {
                    said.put(stamp.kind(), agreed);
                }
            }
        }
        return contradicted;
    }

    boolean has(StampKind kind) {
        return said.containsKey(kind);
    }

    /** The first that was read; a later one that contradicts it does not change how lines are read. */
    @Nullable
    Specification design() {
        return said.get(StampKind.SPECIFICATION) instanceof Stamp.Design(var design) ? design : null;
    }

    @Nullable
    YearMonth original() {
        return said.get(StampKind.MANUFACTURED) instanceof Stamp.OriginalTest(var _, var month) ? month : null;
    }

    /** The month of the requalification read last. */
    @Nullable
    YearMonth previous() {
        return requalifications.isEmpty() ? null : requalifications.getLast().month();
    }

    ReadMarks marks() {
        var condemned = one(Stamp.Condemned.class, StampKind.CONDEMNED, Stamp.Condemned::citation);
        return new ReadMarks(one(Stamp.Design.class, StampKind.SPECIFICATION, Stamp.Design::specification),
                one(Stamp.MadeBy.class, StampKind.MAKER, Stamp.MadeBy::maker),
                one(Stamp.Numbered.class, StampKind.SERIAL, Stamp.Numbered::serial),
                one(Stamp.OriginalTest.class, StampKind.MANUFACTURED, Stamp.OriginalTest::month),
                one(Stamp.Holds.class, StampKind.WATER_CAPACITY, Stamp.Holds::capacity),
                one(Stamp.Weighs.class, StampKind.TARE, Stamp.Weighs::tare),
                one(Stamp.Weighs.class, StampKind.TARE, Stamp.Weighs::kilograms),
                one(Stamp.Pressed.class, StampKind.WORKING_PRESSURE, Stamp.Pressed::toString),
                one(Stamp.Pressed.class, StampKind.TEST_PRESSURE, Stamp.Pressed::toString),
                one(Stamp.Tagged.class, StampKind.TAG, Stamp.Tagged::tag), List.copyOf(requalifications), condemned,
                outOfService());
    }

    private List<String> outOfService() {
        var warnings = new ArrayList<String>();
        if (said.containsKey(StampKind.CONDEMNED)) {
            warnings.add(Condemnation.WARNING);
        }
        if (said.get(StampKind.REJECTED) instanceof Stamp.Rejected(var word)) {
            warnings.add(Condemnation.refusal(word));
        }
        return List.copyOf(warnings);
    }

    private <S extends Stamp, T> @Nullable T one(Class<S> type, StampKind kind,
            Function<S, @Nullable T> value) {
        var stamp = disputed.contains(kind) ? null : said.get(kind);
        return stamp == null ? null : value.apply(type.cast(stamp));
    }
}
