package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;

import org.collarbook.custody.Product;
import org.collarbook.regulation.Lading;
import org.jspecify.annotations.Nullable;

/**
 * What is to go in: a product of the register, or a gravity declared for this question; {@code temperatureF} is the
 * liquid's own. Null is not known.
 */
public record Liquid(@Nullable Product product, @Nullable BigDecimal specificGravity,
        @Nullable BigDecimal temperatureF) {

    private static final Lading PROPANE = new Lading("PROPANE");

    /** Propane is an LP-gas; that another LP-gas is propane, nobody has said. */
    boolean fits(@Nullable Lading service) {
        return product == null || service == null || product.lading().equals(service)
                || service.equals(Lading.LPG) && product.lading().equals(PROPANE);
    }
}
