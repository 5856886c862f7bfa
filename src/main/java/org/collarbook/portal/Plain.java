package org.collarbook.portal;

import java.math.BigDecimal;

/** Numbers without the zeros that the database keeps behind them, and without an exponent. */
final class Plain {

    private Plain() {}

    static BigDecimal number(BigDecimal number) {
        var stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }
}
