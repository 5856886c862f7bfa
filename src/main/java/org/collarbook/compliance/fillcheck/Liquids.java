package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.time.Instant;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.custody.LiquidInside;
import org.collarbook.custody.Product;
import org.collarbook.custody.Products;
import org.collarbook.platform.Inputs;
import org.collarbook.regulation.SpecificGravity;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Reads what is to go in from a question. */
@Component
public class Liquids {

    private static final BigDecimal COLDEST = BigDecimal.valueOf(-60);
    private static final BigDecimal WARMEST = BigDecimal.valueOf(150);
    private static final int MOST_DECIMALS = 1;

    private final Products products;
    private final LiquidInside inside;

    Liquids(Products products, LiquidInside inside) {
        this.products = products;
        this.inside = inside;
    }

    /** {@code pointer} is what the inputs' names begin with: {@code /} in a body, nothing in a query. */
    public Liquid read(String pointer, @Nullable String code, @Nullable BigDecimal gravity,
            @Nullable BigDecimal temperatureF, Inputs inputs) {
        var product = product(pointer + "product", code, inputs);
        if (gravity != null && !SpecificGravity.isPlausible(gravity)) {
            inputs.refuse(pointer + "specificGravity", "OUT_OF_RANGE", gravity.toString(), SpecificGravity.EXPECTED);
        } else if (gravity != null && code != null && !code.isBlank()) {
            inputs.refuse(pointer + "specificGravity", "TOO_MANY", gravity.toString(),
                    "either product or specificGravity");
        }
        if (temperatureF != null && !isTemperature(temperatureF)) {
            inputs.refuse(pointer + "liquidTemperatureF", "OUT_OF_RANGE", temperatureF.toString(),
                    "the liquid's temperature in °F, from " + COLDEST + " to " + WARMEST + ", at most 1 decimal");
        }
        return new Liquid(product, product == null ? gravity : product.specificGravity(), temperatureF, null);
    }

    /** The same beside what is in the container at the moment; {@code heelLb} is how much was told to be left of that. */
    public Liquid into(KnownContainer known, Liquid liquid, @Nullable BigDecimal heelLb, Instant at) {
        boolean mayHoldSome = known.facts().filledOn() != null && (heelLb == null || heelLb.signum() > 0);
        return mayHoldSome && liquid.specificGravity() != null
                ? liquid.onTopOf(inside.lightest(known.id(), at))
                : liquid;
    }

    private @Nullable Product product(String pointer, @Nullable String code, Inputs inputs) {
        var named = inputs.optional(pointer, code, 40);
        var product = named == null ? null : products.byCode(named).orElse(null);
        if (named != null && product == null) {
            inputs.refuse(pointer, "UNKNOWN_PRODUCT", named, "the code of a product, see GET /api/products");
        }
        return product;
    }

    private static boolean isTemperature(BigDecimal given) {
        // the scale first: a number such as 1e999999999 is not to be written out
        return Math.abs((long) given.scale()) <= 20 && given.stripTrailingZeros().scale() <= MOST_DECIMALS
                && given.compareTo(COLDEST) >= 0 && given.compareTo(WARMEST) <= 0;
    }
}
