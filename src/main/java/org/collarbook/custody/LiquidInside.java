package org.collarbook.custody;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What was filled into a container since it was last empty, and is in there still as far as anybody knows. */
@Component
public class LiquidInside {

    private static final int DECIMALS = 4;

    private final JdbcClient jdbc;

    LiquidInside(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Filled(BigDecimal gravity, @Nullable BigDecimal netLb, @Nullable BigDecimal heelLb) {}

    /** The least specific gravity at 60 °F that it can have at the moment; null where none is known. */
    public @Nullable BigDecimal lightest(UUID container, Instant at) {
        BigDecimal inside = null;
        for (var fill : jdbc.sql("""
                select f.specific_gravity as gravity, f.net_lb, f.heel_lb from filed_fill f
                where f.container_id = :container and f.specific_gravity is not null and f.filled_at < :at
                  and f.filled_at > coalesce((select max(e.emptied_at) from filed_emptying e
                    where e.container_id = :container and e.emptied_at <= :at), '-infinity')
                order by f.filled_at""").param("container", container).param("at", at.atOffset(ZoneOffset.UTC))
                .query(Filled.class).list()) {
            inside = inside == null ? fill.gravity : after(inside, fill);
        }
        return inside;
    }

    /** Volumes add up; where nobody tells what was left, all of it may have been. */
    private static BigDecimal after(BigDecimal inside, Filled fill) {
        if (fill.netLb == null || fill.heelLb == null) {
            return inside.min(fill.gravity);
        }
        var volume = fill.heelLb.divide(inside, MathContext.DECIMAL64)
                .add(fill.netLb.subtract(fill.heelLb).divide(fill.gravity, MathContext.DECIMAL64));
        return fill.netLb.divide(volume, MathContext.DECIMAL64).setScale(DECIMALS, RoundingMode.DOWN);
    }
}
