package org.collarbook.schedule.forecast;

import java.time.YearMonth;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** From the first day of {@code from} through the last of {@code through}; a curve for each method that was asked for. */
@Schema(name = "Forecast")
record ForecastAnswer(YearMonth from, YearMonth through, String ruleBook, int containers, @Nullable String currency,
        List<Curve> curves) {

    static ForecastAnswer of(YearMonth first, YearMonth last, String ruleBook, int containers, Question question,
            Map<Choice, Tally> tallies) {
        return new ForecastAnswer(first, last, ruleBook, containers, question.prices().currency(),
                question.methods().stream().map(choice -> Curve.of(choice, tallies.get(choice), first, last)).toList());
    }
}
