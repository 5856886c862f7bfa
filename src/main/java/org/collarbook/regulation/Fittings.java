package org.collarbook.regulation;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What is screwed into a container and affixed to it. {@code reliefValve} false: it was taken out and none put in its
 * place; {@code overfillPrevention} false: somebody looked and there is none. Nothing is said of days before {@code since}.
 */
public record Fittings(@Nullable Boolean reliefValve, @Nullable Boolean overfillPrevention, @Nullable Label label,
        @Nullable LocalDate since) {

    /** What a label says that lets a cylinder go without an overfilling prevention device. */
    public enum Label {
        HORIZONTAL,
        INDUSTRIAL_TRUCK,
        WELDING_AND_CUTTING
    }
}
