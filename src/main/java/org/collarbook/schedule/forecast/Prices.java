package org.collarbook.schedule.forecast;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;

import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/** What one requalification costs, by method and where told by size; what is not told costs nobody knows what. */
final class Prices {

    static final Prices NONE = new Prices(null);

    /** A null size stands for every size that has no price of its own. */
    record Of(Method method, @Nullable String size) {}

    private final @Nullable String currency;
    private final Map<Of, BigDecimal> each = new HashMap<>();

    Prices(@Nullable String currency) {
        this.currency = currency;
    }

    @Nullable
    String currency() {
        return currency;
    }

    /** False when it was told before. */
    boolean tell(Of of, BigDecimal price) {
        return each.put(of, price) == null;
    }

    /** The size, if it matters to what this method costs. */
    @Nullable
    String sizeThatMatters(@Nullable Method method, String size) {
        return method != null && each.containsKey(new Of(method, size)) ? size : null;
    }

    /** Null when it is not known. */
    @Nullable
    BigDecimal of(@Nullable Method method, @Nullable String size) {
        return method == null ? null : each.get(new Of(method, size));
    }
}
