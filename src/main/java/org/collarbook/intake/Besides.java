package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.holds.HoldReason;
import org.collarbook.registry.fittings.Part.Fitted;
import org.collarbook.registry.fittings.Part.Removal;
import org.jspecify.annotations.Nullable;

/**
 * What a row tells that few rows do; {@code inService} says that nothing holds the container. {@code standing} are
 * condemnations and rejections without a record of their own.
 */
record Besides(boolean inService, List<GivenHold> holds, List<Standing> standing, List<GivenPart> parts,
        List<GivenStop> stops, @Nullable LocalDate emptiedOn) {

    static final Besides NOTHING = new Besides(false, List.of(), List.of(), List.of(), List.of(), null);

    record GivenHold(HoldReason reason, @Nullable LocalDate since, @Nullable String note) {}

    /** {@code isDated}: the row tells the month; else it is that of the day on which the ledger is read. */
    record Standing(boolean condemned, YearMonth month, boolean isDated) {}

    record GivenPart(Fitted fitted, @Nullable Removal removal) {}

    record GivenStop(LocalDate since, String reason, @Nullable LocalDate returnedOn, @Nullable String note) {}
}
