package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** What a value makes of a container to which its rule applies. */
public sealed interface Effect {

    /**
     * Months from the original test, and from a mark by its method; what is not named is not accepted. {@code any} takes
     * every whole inspection, and a mark that tells no method, which outside the US stands for one. What was made before
     * the rule has until {@code notBefore}.
     */
    final class Periods implements Effect {

        final int first;
        private final int any;
        final @Nullable YearMonth notBefore;
        private final int[] after = new int[Method.values().length];
        private final boolean afterMarks;

        public Periods(int first, int any, @Nullable YearMonth notBefore, Map<Method, Integer> months) {
            this.first = first;
            this.any = any;
            this.notBefore = notBefore;
            months.forEach((method, number) -> after[method.ordinal()] = number);
            this.afterMarks = any > 0 || !months.isEmpty();
        }

        int after(@Nullable Method method) {
            if (method == null) {
                return any;
            }
            return after[method.ordinal()] == 0 && method.isWholeInspection() ? any : after[method.ordinal()];
        }

        /** Also of a mark that tells no method. */
        public boolean isForAnyMethod() {
            return any > 0;
        }

        /** Whether it says anything once there is a mark. */
        public boolean isAfterMarks() {
            return afterMarks;
        }

        public boolean atFirst() {
            return first > 0;
        }

        public Set<Method> methods() {
            return Arrays.stream(Method.values()).filter(method -> after(method) > 0).collect(Collectors.toSet());
        }

        @Override
        public String toString() {
            StringBuilder text = new StringBuilder(first == 0 ? "" : "first " + months(first));
            for (Method method : Method.values()) {
                if (after[method.ordinal()] > 0) {
                    separate(text).append("after ").append(method).append(' ').append(months(after[method.ordinal()]));
                }
            }
            if (any > 0) {
                separate(text).append("after any ").append(months(any));
            }
            if (notBefore != null) {
                separate(text).append("not before ").append(notBefore);
            }
            return text.toString();
        }

        private static StringBuilder separate(StringBuilder text) {
            return text.append(text.isEmpty() ? "" : ", ");
        }

        private static String months(int months) {
            return months % 12 == 0
                    ? months / 12 + (months == 12 ? " year" : " years")
                    : months + (months == 1 ? " month" : " months");
        }
    }

    /** Never required; or, after the method named, not until another is recorded. */
    record NotRequired(@Nullable Method after) implements Effect {}

    record OtherAuthority(String name) implements Effect {}

    /** The interval recorded with the permit. */
    record PermitInterval() implements Effect {}

    /** The month that is recorded as a fact, such as that of a written scheme. */
    record AsRecorded() implements Effect {}

    record Condemns() implements Effect {}

    record ServiceLife(int months) implements Effect {}

    /** The text does not decide this case. */
    record Undecided(ReasonCode why) implements Effect {}

    /**
     * What must hold before a permission is given, and the reason when it does not; {@code lightest} is the least
     * specific gravity of the liquid for which this is the whole question.
     */
    record Gate(Test[] requires, ReasonCode otherwise, @Nullable BigDecimal lightest) implements Effect {

        private String inWords() {
            return "else " + otherwise + (lightest == null
                    ? ""
                    : "; no filling limit for a specific gravity under " + lightest);
        }
    }

    /** The rule says what it does; the value says since when. */
    record InForce() implements Effect {}

    /** The least B:C rating of an extinguisher beside the tank; required, or only recommended. */
    record Rating(int atLeast, boolean required) implements Effect {

        boolean isMoreThan(@Nullable Rating other) {
            return other == null || required && !other.required
                    || required == other.required && atLeast > other.atLeast;
        }
    }

    record Densities(List<Density> rows) implements Effect {

        /** {@code overPercent} is for a water capacity of more than 1,200 gallons. */
        public record Density(BigDecimal from, BigDecimal to, BigDecimal percent, BigDecimal overPercent) {}
    }

    /** In words, as it is listed. */
    default String shown() {
        return switch (this) {
            case Periods periods -> periods.toString();
            case NotRequired(Method after) -> after == null ? "not required" : "not required again after " + after;
            case OtherAuthority(String name) -> "by " + name;
            case PermitInterval _ -> "the interval recorded with the permit";
            case AsRecorded _ -> "the month on record";
            case Condemns _ -> "condemned";
            case ServiceLife(int months) -> "service life of " + months / 12 + " years";
            case Undecided(ReasonCode why) -> "not decided: " + why;
            case Gate gate -> gate.inWords();
            case InForce _ -> "in force";
            case Rating(int atLeast, boolean required) -> "at least " + atLeast + "-B:C, "
                    + (required ? "required" : "recommended");
            case Densities densities -> densities.rows().size() + " rows of filling density";
        };
    }
}
