package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What one clock says. */
public sealed interface Outcome {

    /**
     * Due in a month. Marks carry no day, and 49 CFR 180.205(c) lets it be met "during or before the month": it is met
     * through the month's last day and overdue from the first of the next.
     */
    record Due(YearMonth month) implements Outcome {

        public static Due after(YearMonth from, int months) {
            return new Due(from.plusMonths(months));
        }

        public LocalDate lastDay() {
            return month.atEndOfMonth();
        }

        public boolean overdueOn(LocalDate day) {
            return isPast(month, day);
        }

        public boolean inMonthOf(LocalDate day) {
            return month.getYear() == day.getYear() && month.getMonthValue() == day.getMonthValue();
        }
    }

    /** Answers the clock only, never the question whether it may be filled. */
    record NotRequired() implements Outcome {}

    /** Out of service for good; since is null when the day is not recorded. */
    record Condemned(@Nullable LocalDate since) implements Outcome {}

    /** Another body's rules: {@code authority} names it, such as "Transport Canada" or "special permit DOT-SP12345". */
    record OtherAuthority(String authority) implements Outcome {}

    /** Never "fine": the reasons name each missing fact or rule. */
    record Undetermined(List<Reason> reasons) implements Outcome {

        public Undetermined {
            reasons = List.copyOf(reasons);
        }
    }

    /** The name that an answer gives it. */
    default String code() {
        return switch (this) {
            case Due _ -> "DUE";
            case NotRequired _ -> "NOT_REQUIRED";
            case Condemned _ -> "CONDEMNED";
            case OtherAuthority _ -> "OTHER_AUTHORITY";
            case Undetermined _ -> "UNDETERMINED";
        };
    }

    /** Whether a month lies before the month of a day; the one place where a month is compared with a day. */
    static boolean isPast(YearMonth month, LocalDate day) {
        int years = day.getYear() - month.getYear();
        return years > 0 || years == 0 && day.getMonthValue() > month.getMonthValue();
    }

    /** Whether a month lies after the month of a day. */
    static boolean isAhead(YearMonth month, LocalDate day) {
        int years = month.getYear() - day.getYear();
        return years > 0 || years == 0 && month.getMonthValue() > day.getMonthValue();
    }
}
