package org.collarbook.schedule.forecast;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.Size;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * {@code years} is 20 when absent, {@code methods} {@code ["AS_LAST"]}; each method is answered by a curve of its own.
 * All {@code costs} are in one currency.
 */
@Schema(name = "ForecastRequest")
record ForecastRequest(@Nullable BigDecimal years, @Nullable List<@Nullable String> methods, @Nullable Filter filter,
        @Nullable List<@Nullable Cost> costs) {

    static final int MOST_YEARS = 30;
    private static final int USUAL_YEARS = 20;
    private static final int MOST_COSTS = 200;
    private static final int FRACTION_DIGITS = 4;
    private static final BigDecimal MOST_EACH = new BigDecimal(1_000_000);
    private static final String PRICE = "an amount of 0 to " + MOST_EACH + " with at most " + FRACTION_DIGITS
            + " digits after the point";

    /** Absent leaves that side open; {@code depot}: what stands there, on the vehicles of its routes, or at their stops. */
    @Schema(name = "ForecastFilter")
    record Filter(@Nullable UUID site, @Nullable UUID customer, @Nullable UUID depot, @Nullable String kind,
            @Nullable String requirement) {}

    /** What one costs by this method; {@code size} absent is every size that has no price of its own. */
    @Schema(name = "ForecastCost")
    record Cost(@Nullable String method, @Nullable String size, @Nullable BigDecimal each,
            @Nullable String currency) {

        private void read(String pointer, Prices prices, Inputs inputs) {
            var readMethod = inputs.word(pointer + "/method", inputs.required(pointer + "/method", method, 40),
                    Method.class);
            var price = inputs.present(pointer + "/each", each, PRICE);
            if (price != null && (price.signum() < 0 || price.compareTo(MOST_EACH) > 0
                    || price.stripTrailingZeros().scale() > FRACTION_DIGITS)) {
                inputs.refuse(pointer + "/each", "OUT_OF_RANGE", price.toString(), PRICE);
            }
            refuseCurrency(pointer + "/currency", prices, inputs);
            var readSize = size == null ? null : Size.parse(size).map(Size::word).orElse(null);
            if (size != null && readSize == null) {
                inputs.refuse(pointer + "/size", "UNKNOWN_SIZE", size, Size.ACCEPTED);
            } else if (readMethod != null && price != null
                    && !prices.tell(new Prices.Of(readMethod, readSize), price)) {
                inputs.refuse(pointer, "TOLD_TWICE", readMethod.name(), "each method and size once");
            }
        }

        private void refuseCurrency(String pointer, Prices prices, Inputs inputs) {
            var code = inputs.required(pointer, currency, 3);
            if (code == null) {
                return;
            }
            if (Currency.getAvailableCurrencies().stream().noneMatch(one -> one.getCurrencyCode().equals(code))) {
                inputs.refuse(pointer, "UNKNOWN_CURRENCY", code, "three capitals of ISO 4217, such as USD");
            } else if (!code.equals(prices.currency())) {
                inputs.refuse(pointer, "ANOTHER_CURRENCY", code, "the currency of the first cost: amounts in several"
                        + " currencies cannot be added");
            }
        }
    }

    Question read(FleetRows fleet) {
        var inputs = new Inputs();
        var asked = filter == null ? new Filter(null, null, null, null, null) : filter;
        var kind = inputs.word("/filter/kind", asked.kind, ContainerKind.class);
        var requirement = inputs.word("/filter/requirement", asked.requirement, Requirement.class);
        if (kind == ContainerKind.EXTINGUISHER) {
            inputs.refuse("/filter/kind", "NOT_FOR_THIS_KIND", kind.name(), "a kind that is registered as a container");
        }
        if (requirement != null && requirement.name().startsWith("EXTINGUISHER")) {
            inputs.refuse("/filter/requirement", "NOT_FOR_THIS_KIND", requirement.name(),
                    "a requirement of containers");
        }
        var containers = new Question.Fleet(asked.site, asked.customer, asked.depot, kind);
        fleet.refuseUnknown(containers, inputs);
        var question = new Question(readYears(inputs), readMethods(inputs), containers, requirement,
                readCosts(inputs));
        inputs.done();
        return question;
    }

    private int readYears(Inputs inputs) {
        if (years == null) {
            return USUAL_YEARS;
        }
        if (years.compareTo(BigDecimal.ONE) < 0 || years.compareTo(BigDecimal.valueOf(MOST_YEARS)) > 0
                || years.stripTrailingZeros().scale() > 0) {
            inputs.refuse("/years", "OUT_OF_RANGE", years.toString(), "1 to " + MOST_YEARS + " whole years");
            return USUAL_YEARS;
        }
        return years.intValueExact();
    }

    private List<Choice> readMethods(Inputs inputs) {
        if (methods == null) {
            return List.of(Choice.AS_LAST);
        }
        var choices = new ArrayList<Choice>();
        if (methods.isEmpty()) {
            inputs.refuse("/methods", "MISSING", "[]", "at least one method");
        }
        for (int i = 0; i < methods.size(); i++) {
            var pointer = "/methods/" + i;
            var text = inputs.required(pointer, methods.get(i), 40);
            var choice = inputs.word(pointer, text, Choice.class);
            if (choice != null && choices.contains(choice)) {
                inputs.refuse(pointer, "TOLD_TWICE", choice.name(), "each method once");
            } else if (choice != null) {
                choices.add(choice);
            }
        }
        return choices;
    }

    private Prices readCosts(Inputs inputs) {
        if (costs == null || costs.isEmpty()) {
            return Prices.NONE;
        }
        if (costs.size() > MOST_COSTS) {
            inputs.refuse("/costs", "TOO_MANY", costs.size() + " costs", "at most " + MOST_COSTS + " costs");
            return Prices.NONE;
        }
        var first = costs.getFirst();
        var prices = new Prices(first == null ? null : first.currency);
        for (int i = 0; i < costs.size(); i++) {
            var pointer = "/costs/" + i;
            var one = inputs.present(pointer, costs.get(i), "{\"method\", \"size\", \"each\", \"currency\"}");
            if (one != null) {
                one.read(pointer, prices, inputs);
            }
        }
        return prices;
    }
}
