package org.collarbook.compliance.fillcheck;

import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.registry.Marks;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.stamps.Stamp;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RequalificationMark;
import org.jspecify.annotations.Nullable;

/** What the register has of the kind that a line is, in plain form; null is not known. */
final class Recorded {

    private Recorded() {}

    static @Nullable String beside(Stamp stamp, KnownContainer known) {
        var marks = known.container().marks();
        return switch (stamp) {
            case Stamp.Design _ -> marks.specification().value().toString();
            case Stamp.Numbered _ -> marks.serial().value().toString();
            case Stamp.MadeBy _ -> text(marks.maker());
            case Stamp.OriginalTest _ -> text(value(marks.manufactured()));
            case Stamp.Tagged _ -> text(known.container().tag());
            case Stamp.Holds _ -> text(value(marks.waterCapacity()));
            case Stamp.Weighs _ -> text(value(marks.tare()));
            case Stamp.Requalified _ -> requalifications(known.facts().requalifications());
            case Stamp.Pressed(boolean test, var _) -> test ? null : text(marks.servicePressure());
            case Stamp.Condemned _,Stamp.Rejected _ -> OutOfService.isRecorded(stamp, known) ? stamp.toString() : null;
            case Stamp.Together _ -> collar(marks);
        };
    }

    private static String collar(Marks marks) {
        return marks.specification().value() + " / " + marks.serial().value() + " / " + text(marks.maker()) + " / "
                + text(value(marks.manufactured()));
    }

    private static @Nullable String requalifications(@Nullable List<Requalification> history) {
        return history == null || history.isEmpty()
                ? null
                : String.join(", ", history.stream().map(RequalificationMark::of).map(Object::toString).toList());
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }

    private static <T> @Nullable T value(@Nullable Stamped<T> stamped) {
        return stamped == null ? null : stamped.value();
    }
}
