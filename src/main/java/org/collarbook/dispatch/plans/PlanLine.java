package org.collarbook.dispatch.plans;

import java.util.Comparator;

/** A cylinder and the visit that pulls it. */
record PlanLine(Cylinder cylinder, Visit visit, Why why) {

    static final Comparator<PlanLine> IN_TIME = Comparator.comparing(PlanLine::visit)
            .thenComparing(PlanLine::cylinder, Cylinder.BY_STOP);

    /** Why it is pulled. */
    enum Why {
        DUE,
        /** No visit comes before its last day. */
        DUE_BEFORE_FIRST_VISIT,
        OVERDUE,
        OUT_OF_SERVICE
    }

    RackDay rack() {
        return new RackDay(visit.day(), visit.vehicle(), cylinder.size());
    }

    IsoWeek week() {
        return IsoWeek.of(visit.day());
    }

    /** One that is out of service needs more than a requalification, or none. */
    boolean goesToTheShop() {
        return why != Why.OUT_OF_SERVICE;
    }

    /** How much of its time is thrown away; none of what is late. */
    long wastedDays() {
        return why == Why.DUE ? cylinder.dueDay().toEpochDay() - visit.day().toEpochDay() : 0;
    }
}
