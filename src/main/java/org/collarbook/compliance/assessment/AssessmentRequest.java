package org.collarbook.compliance.assessment;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Move;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonCreator;

/** Facts as a caller states them; what is absent or null is not known. */
record AssessmentRequest(@Nullable String asOf, @Nullable String jurisdiction, @Nullable ContainerFacts container,
        @Nullable ConditionFacts condition, @Nullable List<HoldFacts> holds,
        @Nullable List<RequalificationFacts> requalifications, @Nullable String filledOn, @Nullable String emptiedOn,
        @Nullable String outOfServiceSince, @Nullable MoveFacts move, @Nullable List<String> policies,
        @Nullable List<String> enable) {

    private static final int MOST_ENTRIES = 200;

    record ConditionFacts(@Nullable List<String> damage, @Nullable BigDecimal tareLossPercent,
            @Nullable Boolean overheated, @Nullable Boolean fire, @Nullable String rejectedOn,
            @Nullable String condemnedOn) {}

    /** A hold as an object, or as its reason alone. */
    record HoldFacts(@Nullable String reason, @Nullable String placedOn) {

        @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
        static HoldFacts of(String reason) {
            return new HoldFacts(reason, null);
        }
    }

    /** A move by road that is asked about. */
    record MoveFacts(@Nullable BigDecimal percentFull, @Nullable String purpose) {

        Move read(FactsReader reader) {
            return new Move(reader.between("/move/percentFull", percentFull, 0, 100),
                    reader.word("/move/purpose", purpose, Purpose.class));
        }
    }

    Facts facts(FactsReader reader, @Nullable LocalDate asOf) {
        var about = container == null ? ContainerFacts.UNKNOWN : container;
        var facts = about.read(reader, asOf).jurisdiction(reader.jurisdiction("/jurisdiction", jurisdiction)).build();
        var manufactured = facts.manufactured();
        var marks = new MarksReader(reader, facts.specification(), manufactured, asOf);
        return facts.toBuilder().condition(condition(reader)).holds(standing(reader))
                .requalifications(history(reader, marks))
                .filledOn(reader.notBefore(manufactured, "/filledOn", filledOn))
                .emptiedOn(reader.notBefore(manufactured, "/emptiedOn", emptiedOn))
                .outOfServiceSince(reader.notBefore(manufactured, "/outOfServiceSince", outOfServiceSince))
                .move(move == null ? null : move.read(reader)).policies(reader.policies("/policies", policies))
                .enable(reader.enabled("/enable", enable)).build();
    }

    private @Nullable Condition condition(FactsReader reader) {
        if (condition == null) {
            return null;
        }
        var damage = condition.damage();
        var found = damage == null ? null : new ArrayList<String>();
        for (int i = 0; damage != null && found != null && i < damage.size(); i++) {
            var one = reader.required("/condition/damage/" + i, damage.get(i), 64);
            found.add(one == null ? "" : one);
        }
        return new Condition(found,
                reader.between("/condition/tareLossPercent", condition.tareLossPercent(), 0, 100),
                condition.overheated(), condition.fire(), reader.day("/condition/rejectedOn", condition.rejectedOn()),
                reader.day("/condition/condemnedOn", condition.condemnedOn()));
    }

    private @Nullable List<StandingHold> standing(FactsReader reader) {
        if (holds == null || reader.tooMany("/holds", holds, MOST_ENTRIES)) {
            return null;
        }
        var standing = new ArrayList<StandingHold>();
        for (int i = 0; i < holds.size(); i++) {
            var hold = holds.get(i);
            var reason = reader.required("/holds/" + i + "/reason", hold == null ? null : hold.reason(), 64);
            var placedOn = reader.day("/holds/" + i + "/placedOn", hold == null ? null : hold.placedOn());
            standing.add(new StandingHold(reason == null ? "" : reason, placedOn));
        }
        return standing;
    }

    private @Nullable List<Requalification> history(FactsReader reader, MarksReader marks) {
        if (requalifications == null || reader.tooMany("/requalifications", requalifications, MOST_ENTRIES)) {
            return null;
        }
        var history = new ArrayList<Requalification>();
        for (int i = 0; i < requalifications.size(); i++) {
            history.addAll(marks.read("/requalifications/" + i, requalifications.get(i)));
        }
        return history;
    }

    /** Either the mark as stamped, or its parts. */
    record RequalificationFacts(@Nullable String month, @Nullable String method, @Nullable String mark,
            @Nullable Boolean star, @Nullable Boolean plus, @Nullable String rin, @Nullable Boolean rinSeen,
            @Nullable String result) {

        @Nullable
        YearMonth monthIn(FactsReader reader, String pointer) {
            return reader.month(pointer + "/month", month);
        }
    }
}
