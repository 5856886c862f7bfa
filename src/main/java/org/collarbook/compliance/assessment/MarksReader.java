package org.collarbook.compliance.assessment;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

import org.collarbook.compliance.assessment.AssessmentRequest.RequalificationFacts;
import org.collarbook.regulation.MarkReading;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** Reads the requalifications of a request, from the mark as stamped or from its parts. */
final class MarksReader {

    private final FactsReader reader;
    private final @Nullable Specification specification;
    private final @Nullable YearMonth manufactured;
    private final @Nullable LocalDate asOf;

    MarksReader(FactsReader reader, @Nullable Specification specification, @Nullable YearMonth manufactured,
            @Nullable LocalDate asOf) {
        this.reader = reader;
        this.specification = specification;
        this.manufactured = manufactured;
        this.asOf = asOf;
    }

    @Nullable
    Requalification read(String pointer, @Nullable RequalificationFacts given) {
        if (given == null) {
            reader.refuse(pointer, "MISSING", null, "an object with a mark, or a month and a method");
            return null;
        }
        var stamped = given.mark() == null ? parts(pointer, given) : mark(pointer, given, given.mark());
        if (stamped == null) {
            return null;
        }
        if (manufactured != null && stamped.month().isBefore(manufactured)) {
            reader.refuse(pointer + (given.mark() == null ? "/month" : "/mark"), "BEFORE_MANUFACTURE",
                    stamped.month().toString(), "a month from " + manufactured + " on");
        }
        var rin = rin(pointer, given);
        var result = reader.word(pointer + "/result", given.result(), Result.class);
        return new Requalification(stamped.month(), stamped.method(),
                Objects.requireNonNullElse(given.star(), stamped.star()),
                Objects.requireNonNullElse(given.plus(), stamped.plus()), rin == null ? stamped.rin() : rin,
                Boolean.TRUE.equals(given.rinSeen()), Objects.requireNonNullElse(result, Result.PASSED));
    }

    private @Nullable Requalification parts(String pointer, RequalificationFacts given) {
        var method = reader.word(pointer + "/method", given.method(), Method.class);
        var month = given.monthIn(reader, pointer);
        if (month == null) {
            if (given.month() == null) {
                reader.refuse(pointer + "/month", "MISSING", null, "a month such as 2016-05, or a mark such as 5-16E");
            }
            return null;
        }
        return Requalification.passed(month, method);
    }

    private @Nullable Requalification mark(String pointer, RequalificationFacts given, String mark) {
        var read = switch (RequalificationMark.read(mark, manufactured, reader.latest(asOf), specification)) {
            case MarkReading.Read(Requalification one, List<String> _) -> one;
            case MarkReading.Ambiguous(List<Requalification> readings) -> {
                reader.refuse(pointer + "/mark", "AMBIGUOUS_MARK", mark, "a mark with one meaning; it may be "
                        + readings.stream().map(RequalificationMark::print).collect(Collectors.joining(" or ")));
                yield null;
            }
            case MarkReading.Unreadable(int index, String _, String expected) -> {
                reader.refuse(pointer + "/mark", "UNREADABLE_MARK", mark, expected + " (from character " + (index + 1)
                        + ")");
                yield null;
            }
        };
        if (read != null && contradicts(pointer, given, read)) {
            reader.refuse(pointer + "/mark", "TOLD_TWICE", mark, "a mark that agrees with what is"
                    + " given beside it, or the mark alone");
            return null;
        }
        return read;
    }

    private boolean contradicts(String pointer, RequalificationFacts given, Requalification read) {
        var month = given.monthIn(reader, pointer);
        var method = reader.word(pointer + "/method", given.method(), Method.class);
        return month != null && !month.equals(read.month()) || method != null && method != read.method()
                || given.rin() != null && read.rin() != null
                        && !given.rin().strip().equalsIgnoreCase(read.rin().value())
                || given.star() != null && given.star() != read.star()
                || given.plus() != null && given.plus() != read.plus();
    }

    private @Nullable Rin rin(String pointer, RequalificationFacts given) {
        var rin = given.rin();
        return rin == null ? null : reader.parsed(pointer + "/rin", "INVALID_RIN", rin, Rin.tryParse(rin));
    }
}
