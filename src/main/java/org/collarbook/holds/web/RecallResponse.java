package org.collarbook.holds.web;

import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.holds.Recall;
import org.collarbook.holds.RecallCounts;
import org.collarbook.holds.RecalledContainer;
import org.collarbook.holds.RecalledContainer.Outcome;
import org.collarbook.platform.Page;
import org.jspecify.annotations.Nullable;

/**
 * A recall; {@code swept} once all that was registered before it has been looked at, {@code end} is absent while it
 * runs.
 */
record RecallResponse(UUID id, String maker, @Nullable String lot, @Nullable String specification,
        @Nullable String serialFirst, @Nullable String serialLast, @Nullable YearMonth manufacturedFirst,
        @Nullable YearMonth manufacturedLast, String issuedBy, @Nullable String reference, Instant occurredAt,
        Instant recordedAt, boolean swept, @Nullable RecallEnd end) {

    record RecallEnd(String reason, Instant recordedAt) {}

    /** With what became of the containers it concerns. */
    record AccountedRecall(RecallResponse recall, RecallCounts counts, Page<ConcernedContainer> containers) {}

    record ConcernedContainer(UUID id, String specification, @Nullable String maker, String serial,
            @Nullable YearMonth manufactured, Outcome outcome, List<String> unknown) {

        static ConcernedContainer from(RecalledContainer one) {
            return new ConcernedContainer(one.id(), one.specification(), one.maker(), one.serial(),
                    one.manufactured() == null ? null : YearMonth.from(one.manufactured()), one.outcome(),
                    one.unknown());
        }
    }

    static RecallResponse from(Recall recall) {
        var about = recall.about();
        var serials = about.serials();
        var end = recall.end();
        return new RecallResponse(recall.id(), about.maker().value(), about.lot(),
                about.specification() == null ? null : about.specification().toString(),
                serials == null ? null : serials.first().value(), serials == null ? null : serials.last().value(),
                about.manufacturedFirst(), about.manufacturedLast(), about.issuedBy(), about.reference(),
                about.occurredAt(), recall.recordedAt(), recall.swept(),
                end == null ? null : new RecallEnd(end.reason(), end.recordedAt()));
    }
}
