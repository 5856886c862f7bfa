package org.collarbook.compliance.assessment;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;

import org.collarbook.compliance.assessment.AssessmentRequest.RequalificationFacts;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;
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

    /** None where it was refused; a mark of a tank may tell of several tests. */
    List<Requalification> read(String pointer, @Nullable RequalificationFacts given) {
        if (given == null) {
            reader.refuse(pointer, "MISSING", null, "an object with a mark, or a month and a method");
            return List.of();
        }
        var stamped = given.mark() == null ? parts(pointer, given) : mark(pointer, given, given.mark());
        if (stamped == null) {
            return List.of();
        }
        if (manufactured != null && stamped.month().isBefore(manufactured)) {
            reader.refuse(pointer + (given.mark() == null ? "/month" : "/mark"), "BEFORE_MANUFACTURE",
                    stamped.month().toString(), "a month from " + manufactured + " on");
        }
        var rin = rin(pointer, given);
        var result = Objects.requireNonNullElse(reader.word(pointer + "/result", given.result(), Result.class),
                Result.PASSED);
        return stamped.requalifications().stream().map(one -> new Requalification(one.month(), one.method(),
                Objects.requireNonNullElse(given.star(), one.star()),
                Objects.requireNonNullElse(given.plus(), one.plus()), rin == null ? one.rin() : rin,
                Boolean.TRUE.equals(given.rinSeen()), result)).toList();
    }

    private @Nullable RequalificationMark parts(String pointer, RequalificationFacts given) {
        var method = reader.word(pointer + "/method", given.method(), Method.class);
        var month = given.monthIn(reader, pointer);
        if (month == null) {
            if (given.month() == null) {
                reader.refuse(pointer + "/month", "MISSING", null, "a month such as 2016-05, or a mark such as 5-16E");
            }
            return null;
        }
        return RequalificationMark.of(Requalification.passed(month, method));
    }

    private @Nullable RequalificationMark mark(String pointer, RequalificationFacts given, String mark) {
        var collar = Collar.of(specification, manufactured, reader.latest(asOf));
        var read = switch (RequalificationMark.read(mark, collar)) {
            case Read<RequalificationMark>(var _, var one, var _) -> one;
            case Ambiguous<RequalificationMark>(var _, var readings, var because) -> {
                reader.refuse(pointer + "/mark", "AMBIGUOUS_MARK", mark, "a mark with one meaning; it may be "
                        + RequalificationMark.either(readings) + ": " + because);
                yield null;
            }
            case Unreadable<RequalificationMark>(var _, var _, int index, var _, var expected) -> {
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

    private boolean contradicts(String pointer, RequalificationFacts given, RequalificationMark read) {
        var month = given.monthIn(reader, pointer);
        var method = reader.word(pointer + "/method", given.method(), Method.class);
        return month != null && !month.equals(read.month()) || method != null && !read.methods().equals(List.of(method))
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
