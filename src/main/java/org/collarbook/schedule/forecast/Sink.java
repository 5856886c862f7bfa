package org.collarbook.schedule.forecast;

import java.time.YearMonth;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** Where the future of a container is told to, as it goes. */
interface Sink {

    /** Something is done in a month; {@code late} when it should have been done in a month that is over already. */
    void done(YearMonth month, Requirement requirement, @Nullable Method method, boolean late);

    /** {@code later}: from some day ahead, not from today. The requirement is null for the container as a whole. */
    void silent(@Nullable Requirement requirement, WhyNot why, boolean later);

    /** The container goes out of service for good. */
    void leaves(YearMonth month);

    /** Told once of a cylinder whose rules do not take the method that was chosen. */
    void methodNotAccepted();

    /** Told once of a cylinder that is to be done as last, and never was. */
    void noLastMethod();
}
