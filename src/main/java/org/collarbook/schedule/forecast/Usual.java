package org.collarbook.schedule.forecast;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** By which method a requirement will be met. */
final class Usual {

    private Usual() {}

    /** The methods to try, the one that is wanted first; empty when no record moves this clock. */
    static Set<Method> methods(Facts facts, Requirement requirement, Choice choice) {
        var tried = new LinkedHashSet<Method>();
        if (requirement == Requirement.SHELL && facts.kind() == ContainerKind.CYLINDER) {
            add(tried, choice.method());
            add(tried, lastMethod(facts));
            tried.add(Method.VOLUMETRIC_EXPANSION);
            for (var method : Method.values()) {
                add(tried, method.isOfCylinder() ? method : null);
            }
        } else if (requirement.hasHistory()) {
            add(tried, requirement == Requirement.CATHODIC_PROTECTION ? null : last(facts, requirement));
            add(tried, usual(requirement));
        }
        return tried;
    }

    static @Nullable Method lastMethod(Facts facts) {
        var newest = newestOfCylinder(facts);
        return newest == null ? null : newest.method();
    }

    /** The record that will be made; star and plus are borne again where the same is done as last. */
    static Requalification record(Facts facts, YearMonth month, Method method) {
        var newest = newestOfCylinder(facts);
        boolean same = newest != null && newest.method() == method;
        return new Requalification(month, method, same && newest.star(), same && newest.plus(), null, true,
                Result.PASSED);
    }

    private static @Nullable Requalification newestOfCylinder(Facts facts) {
        return newest(facts, Requirement.SHELL, true);
    }

    private static @Nullable Method last(Facts facts, Requirement requirement) {
        var newest = newest(facts, requirement, false);
        return newest == null ? null : newest.method();
    }

    private static @Nullable Requalification newest(Facts facts, Requirement requirement, boolean ofCylinder) {
        Requalification newest = null;
        for (var past : facts.requalifications() == null ? List.<Requalification>of() : facts.requalifications()) {
            var method = past.method();
            if (past.result() == Result.PASSED && method != null && requirement.movedBy(method)
                    && (!ofCylinder || method.isOfCylinder())
                    && (newest == null || !past.month().isBefore(newest.month()))) {
                newest = past;
            }
        }
        return newest;
    }

    /** What meets it alone, where nothing tells how it was met before. */
    private static @Nullable Method usual(Requirement requirement) {
        return switch (requirement) {
            case SHELL, PERIODIC_TEST -> Method.PERIODIC;
            case FILLER -> Method.SHELL_AND_FILLER;
            case VISUAL -> Method.EXTERNAL_VISUAL;
            case EXTERNAL_VISUAL -> Method.V;
            case INTERNAL_VISUAL -> Method.I;
            case LEAKAGE -> Method.K;
            case PRESSURE -> Method.P;
            case LINING -> Method.L;
            case THICKNESS -> Method.T;
            case INTERMEDIATE_TEST -> Method.INTERMEDIATE;
            case TEN_YEAR_EXAMINATION -> Method.EXAMINATION;
            case TWENTY_YEAR_EXAMINATION -> Method.THOROUGH_EXAMINATION;
            case WRITTEN_SCHEME -> null;
            case RELIEF_VALVE -> Method.VALVE_REPLACED;
            case RELIEF_VALVE_VISUAL -> Method.VALVE_INSPECTED;
            case DELIVERY_HOSE -> Method.HOSE_TESTED;
            case UNLOADING_SYSTEM -> Method.UNLOADING_SYSTEM_INSPECTED;
            // what was installed once is tested afterwards
            case CATHODIC_PROTECTION -> Method.PROTECTION_TESTED;
            case EXTINGUISHER_INSPECTION -> Method.EXTINGUISHER_INSPECTED;
            case EXTINGUISHER_MAINTENANCE -> Method.EXTINGUISHER_MAINTAINED;
            case EXTINGUISHER_EMPTYING -> Method.EXTINGUISHER_EMPTIED;
            case EXTINGUISHER_PRESSURE_TEST -> Method.EXTINGUISHER_PRESSURE_TESTED;
        };
    }

    private static void add(Set<Method> tried, @Nullable Method method) {
        if (method != null) {
            tried.add(method);
        }
    }

    /** The facts with one more record. */
    static Facts with(Facts facts, Requalification record) {
        var history = new ArrayList<Requalification>();
        if (facts.requalifications() != null) {
            history.addAll(facts.requalifications());
        }
        history.add(record);
        return facts.toBuilder().requalifications(history).build();
    }
}
