package org.collarbook.custody.web;

import java.time.YearMonth;
import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** What was done to an extinguisher, in which month and by whom. */
@Schema(requiredProperties = {"month", "method", "by"})
record ExtinguisherRecordRequest(@Nullable String month, @Nullable String method, @Nullable String by) {

    private static final List<Method> METHODS = List.of(Method.EXTINGUISHER_INSPECTED, Method.EXTINGUISHER_MAINTAINED,
            Method.EXTINGUISHER_EMPTIED, Method.EXTINGUISHER_PRESSURE_TESTED);
    private static final String ACCEPTED = "one of "
            + METHODS.stream().map(Method::name).collect(Collectors.joining(", "));

    record Read(YearMonth month, Method method, String by) {}

    Read read(YearMonth thisMonth, @Nullable YearMonth manufactured) {
        var inputs = new Inputs();
        var given = month == null || month.isBlank() ? null : month;
        var done = Months.read("/month", inputs.present("/month", given, "the month in which it was done"), thisMonth,
                inputs);
        if (done != null && manufactured != null && done.isBefore(manufactured)) {
            inputs.refuse("/month", "BEFORE_MANUFACTURE", month, "not before its manufacture in " + manufactured);
        }
        var what = method(inputs);
        var who = inputs.required("/by", by, 200);
        inputs.done();
        if (done == null || what == null || who == null) {
            throw new IllegalStateException("a record was neither read nor refused");
        }
        return new Read(done, what, who);
    }

    private @Nullable Method method(Inputs inputs) {
        var given = method == null || method.isBlank() ? null : method.strip();
        if (inputs.present("/method", given, ACCEPTED) == null) {
            return null;
        }
        var known = METHODS.stream().filter(one -> one.name().equalsIgnoreCase(given)).findFirst().orElse(null);
        if (known == null) {
            inputs.refuse("/method", "UNKNOWN_WORD", method, ACCEPTED);
        }
        return known;
    }
}
