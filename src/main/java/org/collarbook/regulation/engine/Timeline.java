package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The days on which any value of the book starts or ends. */
record Timeline(LocalDate[] switches) {

    /** Which stretch between two switches a day lies in; 0 is the time before the first. */
    int stretchOf(LocalDate day) {
        for (int i = switches.length; i > 0; i--) {
            if (!day.isBefore(switches[i - 1])) {
                return i;
            }
        }
        return 0;
    }

    @Nullable
    LocalDate nextAfter(LocalDate day) {
        return Arrays.stream(switches).filter(date -> date.isAfter(day)).findFirst().orElse(null);
    }
}
