package org.collarbook.registry.stamps;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/** The parts of one line put together, each doubt and each fault told of the whole line. */
final class Joined {

    private final StampText text;
    private final List<String> warnings;
    private List<List<Stamp>> possible = List.of(List.of());
    private String because = "";
    private Reading.@Nullable Unreadable<Stamp> fault;

    Joined(StampText text) {
        this.text = text;
        this.warnings = text.warnings();
    }

    Joined add(Stamp stamp) {
        possible = possible.stream().map(stamps -> with(stamps, stamp)).toList();
        return this;
    }

    /** {@code start} is where the part stands in the plain text. */
    Joined add(Reading<Stamp> part, int start) {
        if (fault != null) {
            return this;
        }
        switch (part) {
            case Reading.Read<Stamp>(var _, var stamp, var doubts) -> {
                add(stamp);
                warnings.addAll(doubts);
            }
            case Reading.Ambiguous<Stamp>(var _, var stamps, var why) when possible.size() == 1 -> {
                possible = stamps.stream().map(stamp -> with(possible.getFirst(), stamp)).toList();
                because = why;
            }
            case Reading.Ambiguous<Stamp> _ -> fault = text.unreadable(start,
                    "each of the dates on a line of its own, since more than one has several meanings");
            case Reading.Unreadable<Stamp> no -> fault = text.unreadable(no.fault(), start + no.index(), no.expected());
        }
        return this;
    }

    Joined warn(String doubt) {
        warnings.add(doubt);
        return this;
    }

    private static List<Stamp> with(List<Stamp> stamps, Stamp stamp) {
        return Stream.concat(stamps.stream(), Stream.of(stamp)).toList();
    }

    Taken taken() {
        if (fault != null) {
            return new Taken(StampKind.COLLAR, fault);
        }
        var stamps = new ArrayList<Stamp>();
        possible.forEach(parts -> stamps.add(parts.size() == 1 ? parts.getFirst() : new Stamp.Together(parts)));
        return new Taken(stamps.getFirst().kind(), stamps.size() == 1
                ? new Reading.Read<>(text.raw(), stamps.getFirst(), warnings)
                : new Reading.Ambiguous<>(text.raw(), stamps, because));
    }
}
