package org.collarbook.registry.stamps;

import java.math.BigDecimal;

import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.collarbook.regulation.WaterCapacity.Unit;
import org.jspecify.annotations.Nullable;

/** Whether two lines say the same though they write it otherwise. */
final class Agreement {

    private static final BigDecimal HALF_A_TENTH = new BigDecimal("0.05");

    private Agreement() {}

    /** The fuller of the two, or null where they contradict each other. */
    static @Nullable Stamp of(Stamp before, Stamp now) {
        if (before.equals(now)) {
            return before;
        }
        boolean same = switch (before) {
            case Stamp.OriginalTest(var _, var month) -> now instanceof Stamp.OriginalTest(var _, var other)
                    && month.equals(other);
            case Stamp.Holds(var capacity) -> now instanceof Stamp.Holds(var other) && areSame(capacity, other);
            case Stamp.Weighs weight -> now instanceof Stamp.Weighs other && areSame(weight, other);
            case Stamp.Design(var mark) -> now instanceof Stamp.Design(var other) && areSame(mark, other);
            case Stamp.Requalified _,Stamp.Tagged _,Stamp.Numbered _,Stamp.MadeBy _,Stamp.Pressed _,Stamp.Condemned _,Stamp.Rejected _,Stamp.Together _ ->
                false;
        };
        return same ? isFuller(now) ? now : before : null;
    }

    private static boolean isFuller(Stamp now) {
        return now instanceof Stamp.OriginalTest(var inspector, var _) && inspector != null
                || now instanceof Stamp.Design(var mark) && mark.detail() != null;
    }

    private static boolean areSame(Specification one, Specification other) {
        return one.authority() == other.authority() && (isUnitedNations(one) || isUnitedNations(other));
    }

    /** UN alone, whose standard stands elsewhere. */
    private static boolean isUnitedNations(Specification mark) {
        return mark.authority() == Authority.UN && mark.detail() == null && mark.alsoMarked() == null;
    }

    /** In two units, within the rounding of the coarser. */
    private static boolean areSame(WaterCapacity one, WaterCapacity other) {
        return one.unit() == other.unit()
                ? one.amount().compareTo(other.amount()) == 0
                : isWithin(one.toPounds(), other.toPounds(), halfStep(one).max(halfStep(other)));
    }

    private static boolean areSame(Stamp.Weighs one, Stamp.Weighs other) {
        var kilograms = one.kilograms() == null ? other.kilograms() : one.kilograms();
        boolean apart = (one.kilograms() == null) != (other.kilograms() == null);
        return kilograms == null || !apart
                ? one.tare().equals(other.tare())
                // trailing zeros of pounds are not kept, so that they are taken for tenths
                : isWithin(one.tare().pounds(), other.tare().pounds(), halfStep(new WaterCapacity(kilograms,
                        Unit.KG)).max(HALF_A_TENTH));
    }

    private static BigDecimal halfStep(WaterCapacity stamped) {
        return new WaterCapacity(BigDecimal.valueOf(5, stamped.amount().scale() + 1), stamped.unit()).toPounds();
    }

    private static boolean isWithin(BigDecimal one, BigDecimal other, BigDecimal step) {
        return one.subtract(other).abs().compareTo(step) <= 0;
    }
}
