package org.collarbook.compliance;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/** A requalification with the day on which it was done, where more than the month on the mark is known. */
record Dated(Requalification done, @Nullable LocalDate day) {

    /** Written by the statement as month, method, star, plus, RIN, RIN seen, result, day. */
    static Dated parse(String text) {
        var part = text.split(",", -1);
        var done = new Requalification(YearMonth.from(LocalDate.parse(part[0])),
                part[1].isEmpty() ? null : Method.valueOf(part[1]), part[2].equals("t"), part[3].equals("t"),
                part[4].isEmpty() ? null : new Rin(part[4]), part[5].equals("t"), Result.valueOf(part[6]));
        return new Dated(done, part[7].isEmpty() ? null : LocalDate.parse(part[7]));
    }

    /**
     * Without the rejections that were answered within their month. By their marks the two would be of one month, in
     * which no test lifts a rejection; where both days are known, it is known which came first.
     */
    static Stream<Requalification> history(List<Dated> records, ContainerKind kind) {
        return records.stream().filter(one -> records.stream().noneMatch(other -> other.lifts(one, kind)))
                .map(Dated::done);
    }

    /** By the day where it is known, else by the month of the mark. */
    boolean isBefore(LocalDate other) {
        return day == null ? done.month().isBefore(YearMonth.from(other)) : day.isBefore(other);
    }

    boolean isAfter(LocalDate other) {
        return day == null ? done.month().isAfter(YearMonth.from(other)) : day.isAfter(other);
    }

    private boolean lifts(Dated rejection, ContainerKind kind) {
        return done.result() == Result.PASSED && rejection.done.result() == Result.REJECTED && day != null
                && rejection.day != null && day.isAfter(rejection.day) && done.month().equals(rejection.done.month())
                && answers(rejection.done.method(), kind);
    }

    private boolean answers(@Nullable Method rejected, ContainerKind kind) {
        var method = done.method();
        return method != null && (method.answers(rejected)
                || kind == ContainerKind.CYLINDER && method.clears(rejected));
    }
}
