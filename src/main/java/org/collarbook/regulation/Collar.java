package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known already when a stamp is read: it decides between readings that the stamp alone leaves open. Null is not
 * known. {@code previous} is the mark before this one.
 */
public record Collar(@Nullable Specification specification, @Nullable YearMonth manufactured,
        @Nullable YearMonth previous, LocalDate asOf) {

    public static Collar unknown(LocalDate asOf) {
        return new Collar(null, null, null, asOf);
    }

    public static Collar of(@Nullable Specification specification, LocalDate asOf) {
        return new Collar(specification, null, null, asOf);
    }

    public static Collar of(@Nullable Specification specification, @Nullable YearMonth manufactured, LocalDate asOf) {
        return new Collar(specification, manufactured, null, asOf);
    }

    public boolean isUnder(Authority one, Authority... others) {
        return specification != null && (specification.authority() == one
                || List.of(others).contains(specification.authority()));
    }
}
