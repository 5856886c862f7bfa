package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was found when somebody looked, and the standing rejection or condemnation. As with a collar that was read and
 * bears no later mark, what was not found is null in a condition that was recorded; a null condition means that nobody
 * looked.
 */
public record Condition(@Nullable List<String> damage, @Nullable BigDecimal tareLossPercent,
        @Nullable Boolean overheated, @Nullable Boolean fire, @Nullable LocalDate rejectedOn,
        @Nullable LocalDate condemnedOn) {

    /** Looked at, nothing found. */
    public static final Condition SOUND = new Condition(List.of(), null, false, false, null, null);

    public Condition {
        damage = damage == null ? null : List.copyOf(damage);
    }
}
