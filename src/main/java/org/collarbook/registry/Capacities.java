package org.collarbook.registry;

import java.math.BigDecimal;

import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.WaterCapacity;

/** Water capacities that a container on this earth can have; beyond them a unit or a decimal point has slipped. */
final class Capacities {

    private static final BigDecimal LEAST = new BigDecimal("0.1");
    private static final BigDecimal MOST = new BigDecimal("10000000");

    private Capacities() {}

    static ParseResult<WaterCapacity> tryParse(String text) {
        var result = WaterCapacity.tryParse(text);
        if (result instanceof Parsed<WaterCapacity>(var capacity, var _)) {
            var pounds = capacity.toPounds();
            if (pounds.compareTo(LEAST) < 0 || pounds.compareTo(MOST) > 0) {
                return ParseResult.rejectedAt(text.strip(), 0, "a water capacity from 0.1 lb to 10,000,000 lb");
            }
        }
        return result;
    }
}
