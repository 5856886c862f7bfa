package org.collarbook.bench;

import java.util.Arrays;
import java.util.Locale;

/** Prints what was measured, one line each. */
public final class Figures {

    private Figures() {}

    public static void print(String what, Object... values) {
        System.out.println("bench " + String.format(Locale.ROOT, what, values));
    }

    /** The time below which the share of the calls stayed, in microseconds. */
    public static double percentile(long[] nanos, double share) {
        var sorted = nanos.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.min(sorted.length - 1L, Math.round(share * sorted.length))] / 1000.0;
    }

    public static double perSecond(long count, long nanos) {
        return count * 1e9 / nanos;
    }
}
