package org.collarbook.intake;

import java.util.List;
import java.util.function.BiPredicate;
import java.util.function.Function;

import org.collarbook.registry.Marks;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.Ownership;
import org.collarbook.registry.Particulars;
import org.collarbook.registry.ServicePressure;
import org.collarbook.registry.Stamped;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Permit;
import org.jspecify.annotations.Nullable;

/**
 * A fact of which a row may say otherwise than the register, so that more may be allowed than before. It is taken, since a
 * ledger may be the better source; but somebody should know. What was not known is told of by nobody: a row is there to
 * tell it. {@code coated} and the like have a no; of a use, a kind of steel or where a valve sits the rules make more or
 * less by what else is known, so that any other word is told.
 */
record Easing<T>(LedgerColumn column, String code, Function<NewContainer, @Nullable T> fact, BiPredicate<T, T> eases) {

    private static final List<Easing<?>> ALL = List.of(
            wasNo(LedgerColumn.COATED, Particulars::coated),
            wasNo(LedgerColumn.LINED, Particulars::lined),
            wasNo(LedgerColumn.EXCLUSIVE, known -> known.service().exclusive()),
            wasNo(LedgerColumn.CORROSION_FREE, known -> known.service().corrosionFree()),
            wasNo(LedgerColumn.MARKS_LEGIBLE, Particulars::marksLegible),
            wasNo(LedgerColumn.OWNER, known -> isOurs(known.ownership())),
            wasNo(LedgerColumn.OWNER_CONSENT, known -> known.ownership().consent()),
            // LPG may be filled with most; of another lading than that, the next may be filled with what it was not
            known(LedgerColumn.LADING, "WAS_NO", known -> known.service().lading(),
                    (was, is) -> !was.equals(Lading.LPG) && !was.equals(is)),
            known(LedgerColumn.EXTENDED_PERIOD, "WAS_NO", Particulars::extendedPeriod,
                    (was, is) -> was == ExtendedPeriod.NONE && is != ExtendedPeriod.NONE),
            known(LedgerColumn.EXTENDED_PERIOD, "WAS_OTHERWISE", Particulars::extendedPeriod,
                    (was, is) -> was != ExtendedPeriod.NONE && is != ExtendedPeriod.NONE && was != is),
            known(LedgerColumn.STEEL, "WAS_OTHERWISE", Particulars::steel, Easing::differ),
            known(LedgerColumn.USE, "WAS_OTHERWISE", Particulars::use, Easing::differ),
            known(LedgerColumn.INSTALLATION, "WAS_OTHERWISE", Particulars::installation, Easing::differ),
            known(LedgerColumn.RELIEF_VALVE, "WAS_OTHERWISE", Particulars::reliefValve, Easing::differ),
            ofPermit(LedgerColumn.PERMIT_NUMBER, Permit::number, Easing::differ),
            ofPermit(LedgerColumn.PERMIT_EXPIRES, Permit::expires, Easing::grows),
            ofPermit(LedgerColumn.PERMIT_INTERVAL_YEARS, Permit::intervalYears, Easing::grows),
            known(LedgerColumn.SCHEME_DUE, "WAS_OTHERWISE", Particulars::schemeDue, Easing::grows),
            known(LedgerColumn.OUT_OF_SERVICE_SINCE, "WAS_OTHERWISE", Particulars::outOfServiceSince, Easing::grows),
            marked(LedgerColumn.KIND, "WAS_OTHERWISE", Marks::kind, Easing::differ),
            // the filling limit is a share of the capacity, and goes on top of the tare on the scale
            marked(LedgerColumn.WATER_CAPACITY, "CAPACITY_GREW", marks -> value(marks.waterCapacity()),
                    (was, is) -> grows(was.toPounds(), is.toPounds())),
            marked(LedgerColumn.TARE, "TARE_DIFFERS", marks -> value(marks.tare()), Easing::differ),
            marked(LedgerColumn.SERVICE_PRESSURE, "PRESSURE_GREW", Marks::servicePressure,
                    (was, is) -> grows(was.psig(), is.psig())));

    /** Remarks on all that a row eases. */
    static void tell(NewContainer before, NewContainer after, Problems problems) {
        ALL.forEach(one -> one.compare(before, after, problems));
    }

    private void compare(NewContainer before, NewContainer after, Problems problems) {
        var was = fact.apply(before);
        var is = fact.apply(after);
        if (was != null && is != null && eases.test(was, is)) {
            problems.remark(column, code, word(is), "the register had " + word(was) + ": make sure that this is right,"
                    + " for it may allow fills that were refused");
        }
    }

    private static String word(Object value) {
        return switch (value) {
            case Boolean yes -> yes ? "yes" : "no";
            case ServicePressure pressure -> pressure.psig() + " psig";
            default -> value.toString();
        };
    }

    private static Easing<Boolean> wasNo(LedgerColumn column, Function<Particulars, @Nullable Boolean> fact) {
        return known(column, "WAS_NO", fact, (was, is) -> !was && is);
    }

    /** Whoever may fill it as its owner may do so without anybody's consent. */
    private static @Nullable Boolean isOurs(Ownership ownership) {
        return ownership.owned() == null && Boolean.FALSE.equals(ownership.consent())
                ? Boolean.FALSE
                : ownership.owned();
    }

    private static <T> Easing<T> known(LedgerColumn column, String code, Function<Particulars, @Nullable T> fact,
            BiPredicate<T, T> eases) {
        return new Easing<>(column, code, container -> fact.apply(container.particulars()), eases);
    }

    private static <T> Easing<T> ofPermit(LedgerColumn column, Function<Permit, @Nullable T> fact,
            BiPredicate<T, T> eases) {
        return known(column, "WAS_OTHERWISE", known -> known.permit() == null ? null : fact.apply(known.permit()),
                eases);
    }

    private static <T> Easing<T> marked(LedgerColumn column, String code, Function<Marks, @Nullable T> fact,
            BiPredicate<T, T> eases) {
        return new Easing<>(column, code, container -> fact.apply(container.marks()), eases);
    }

    private static <T> @Nullable T value(@Nullable Stamped<T> mark) {
        return mark == null ? null : mark.value();
    }

    private static <T> boolean differ(T was, T is) {
        return !was.equals(is);
    }

    private static <T extends Comparable<? super T>> boolean grows(T was, T is) {
        return is.compareTo(was) > 0;
    }
}
