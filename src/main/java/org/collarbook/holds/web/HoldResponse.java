package org.collarbook.holds.web;

import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.holds.Hold;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.LiftedBy;
import org.collarbook.holds.Placing;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/**
 * A hold; {@code lift} is absent while it stands, {@code recall} and {@code ledger}, the import that told of it, where a person
 * placed it.
 */
public record HoldResponse(UUID id, UUID containerId, HoldReason reason, String text, Citation citation,
        List<LiftedBy> liftedBy, @Nullable String note, @Nullable UUID recall, @Nullable UUID ledger,
        Instant occurredAt, Instant recordedAt, UUID recordedBy, @Nullable LiftResponse lift) {

    public record LiftResponse(LiftedBy by, @Nullable UUID requalification, @Nullable String name,
            @Nullable String qualification, @Nullable String note, Instant recordedAt, UUID recordedBy) {}

    /** Held, or out of service for good: one of {@code hold} and {@code condemned} is told. */
    record PlacedHold(Outcome outcome, @Nullable HoldResponse hold, @Nullable CondemnedContainer condemned) {

        enum Outcome {
            HELD,
            CONDEMNED
        }

        static PlacedHold held(HoldResponse hold) {
            return new PlacedHold(Outcome.HELD, hold, null);
        }

        static PlacedHold condemned(Placing.Condemned condemned) {
            return new PlacedHold(Outcome.CONDEMNED, null, new CondemnedContainer(condemned.month(),
                    Placing.Condemned.TEXT, Placing.Condemned.CITATION));
        }
    }

    record CondemnedContainer(YearMonth month, String text, Citation citation) {}

    public static HoldResponse from(Hold hold, Set<LiftedBy> liftedBy) {
        return new HoldResponse(hold.id(), hold.containerId(), hold.reason(), hold.reason().sentence(),
                hold.reason().citation(), liftedBy.stream().sorted().toList(), hold.note(), hold.recall(),
                hold.ledger(),
                hold.occurredAt(), hold.recordedAt(), hold.recordedBy(), lift(hold.lift()));
    }

    private static @Nullable LiftResponse lift(Hold.@Nullable Lift lift) {
        return lift == null
                ? null
                : new LiftResponse(lift.by(), lift.requalification(), lift.person(), lift.qualification(), lift.note(),
                        lift.recordedAt(), lift.recordedBy());
    }
}
