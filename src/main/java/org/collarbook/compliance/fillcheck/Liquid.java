package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;

import org.collarbook.custody.Product;
import org.collarbook.regulation.Lading;
import org.jspecify.annotations.Nullable;

/**
 * What is to go in: a product of the register, or a gravity declared for this question; {@code temperatureF} is the
 * liquid's own. {@code onTopOf} is the lightest that went in since the container was last empty. Null is not known.
 */
public record Liquid(@Nullable Product product, @Nullable BigDecimal specificGravity,
        @Nullable BigDecimal temperatureF, @Nullable BigDecimal onTopOf) {

    private static final Lading PROPANE = new Lading("PROPANE");

    Liquid onTopOf(@Nullable BigDecimal lightest) {
        return new Liquid(product, specificGravity, temperatureF, lightest);
    }

    /** Whether what is inside may be lighter: a pound of it takes up more room, and nobody knows how much is left. */
    boolean isOnLighter() {
        return specificGravity != null && onTopOf != null && onTopOf.compareTo(specificGravity) < 0;
    }

    /** The gravity that the limit is of. */
    @Nullable
    BigDecimal limiting() {
        return isOnLighter() ? onTopOf : specificGravity;
    }

    /** Propane is an LP-gas; that another LP-gas is propane, nobody has said. */
    boolean fits(@Nullable Lading service) {
        return product == null || service == null || product.lading().equals(service)
                || service.equals(Lading.LPG) && product.lading().equals(PROPANE);
    }
}
