package org.collarbook.intake.scans;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.fills.TellFill;
import org.collarbook.compliance.swaps.RecordSwap;
import org.collarbook.compliance.swaps.StopReader;
import org.collarbook.compliance.swaps.SwapAnswer;
import org.collarbook.compliance.swaps.SwapCommand;
import org.collarbook.custody.Emptyings;
import org.collarbook.custody.Movements;
import org.collarbook.custody.Moving;
import org.collarbook.custody.NewMovement;
import org.collarbook.custody.PlaceDisputes;
import org.collarbook.custody.Places;
import org.collarbook.custody.Sightings;
import org.collarbook.custody.Sightings.Seeing;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.holds.Placing;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Records one line by what its kind's own endpoint records it by; refuses by problem. */
@Component
class RecordLine {

    private final Movements movements;
    private final Emptyings emptyings;
    private final Places places;
    private final Holds holds;
    private final TellFill tellFill;
    private final Sightings sightings;
    private final PlaceDisputes disputes;
    private final StopReader stops;
    private final RecordSwap recordSwap;
    private final Clock clock;

    RecordLine(Movements movements, Emptyings emptyings, Places places, Holds holds, TellFill tellFill,
            Sightings sightings, PlaceDisputes disputes, StopReader stops, RecordSwap recordSwap, Clock clock) {
        this.sightings = sightings;
        this.disputes = disputes;
        this.stops = stops;
        this.recordSwap = recordSwap;
        this.movements = movements;
        this.emptyings = emptyings;
        this.places = places;
        this.holds = holds;
        this.tellFill = tellFill;
        this.clock = clock;
    }

    LineAnswer record(String id, ReadLine.Line told, Map<String, UUID> containers, Caller by) {
        if (!ScanKind.isOpen(told.line(), by.roles())) {
            throw Problem.invalid("/kind", "FORBIDDEN", "a key with the roles " + by.roles(),
                    ScanKind.roles(told.line())).asException();
        }
        return switch (told.line()) {
            case ScanLine.Swapped swapped -> swapped(id, told, swapped, containers, by);
            case ScanLine.OfOne line -> ofOne(id, told, line,
                    Objects.requireNonNull(containers.get(ScanLine.ITSELF)), by);
        };
    }

    private LineAnswer ofOne(String id, ReadLine.Line told, ScanLine.OfOne line, UUID container, Caller by) {
        return switch (line) {
            case ScanLine.Moved moved -> moved(id, told, container, moved.toSite(), moved.fromSite(), null, by);
            case ScanLine.Returned returned -> returned(id, told, container, returned, by);
            case ScanLine.Filled filled -> filled(id, filled, container, by);
            case ScanLine.Held held -> held(id, told, container, held, by);
            case ScanLine.Seen seen -> seen(id, told, container, seen, by);
        };
    }

    private LineAnswer moved(String id, ReadLine.Line told, UUID container, @Nullable UUID toSite,
            @Nullable UUID fromSite, @Nullable UUID emptying, Caller by) {
        var inputs = new Inputs();
        var to = inputs.present("/toSite", toSite, "the id of the site it went to");
        known("/toSite", to, inputs);
        known("/fromSite", fromSite, inputs);
        inputs.done();
        return switch (movements.record(new NewMovement(container, Objects.requireNonNull(to), told.at(),
                fromSite), by)) {
            case Moving.Recorded(var movement, var moved, var disputed) ->
                LineAnswer.moved(id, container, movement, moved,
                        disputed, emptying);
            case Moving.Disputed(var recorded, var stated) -> throw Problem.invalid("/fromSite", "PLACE_DISPUTED",
                    stated.toString(), "the site where the register has it at that time, " + recorded
                            + ", or none: look at the container and record the movement that is missing")
                    .asException();
            case Moving.UnknownContainer() -> throw unknown(container);
        };
    }

    private void known(String pointer, @Nullable UUID site, Inputs inputs) {
        if (site != null && places.site(site).isEmpty()) {
            inputs.refuse(pointer, "UNKNOWN_SITE", site.toString(), "the id of a site");
        }
    }

    /** Found empty where it came from or on arrival: one moment tells both. */
    private LineAnswer returned(String id, ReadLine.Line told, UUID container, ScanLine.Returned returned, Caller by) {
        var inputs = new Inputs();
        var how = inputs.optional("/how", returned.how(), 200);
        if (how != null && !returned.isEmpty()) {
            inputs.refuse("/how", "NOT_EMPTY", how, "nothing, or empty: true");
        }
        inputs.done();
        var emptying = returned.isEmpty() ? emptyings.record(container, told.at(), how, by).id() : null;
        return moved(id, told, container, returned.toSite(), null, emptying, by);
    }

    private LineAnswer filled(String id, ScanLine.Filled filled, UUID container, Caller by) {
        var recorded = tellFill.tell(filled.of(container).toldAfterwards(clock.instant()), by);
        return LineAnswer.filled(id, container, recorded.fill().id(), recorded.refusals(), recorded.hold());
    }

    private LineAnswer held(String id, ReadLine.Line told, UUID container, ScanLine.Held held, Caller by) {
        var inputs = new Inputs();
        var given = held.reason() == null || held.reason().isBlank() ? null : held.reason();
        var reason = inputs.word("/reason", inputs.present("/reason", given, "a code of GET /api/holds/reasons"),
                HoldReason.class);
        var note = inputs.optional("/note", held.note(), 1000);
        inputs.done();
        return switch (holds.place(container, Objects.requireNonNull(reason), note, told.at(), by)) {
            case Placing.Placed(var hold) -> LineAnswer.held(id, container, hold.id());
            case Placing.Condemned(var month) -> LineAnswer.condemned(id, container, month, Placing.Condemned.CITATION);
            case Placing.AlreadyCondemned() -> throw Problem.conflict("CONTAINER_CONDEMNED", "This container is"
                    + " condemned and out of service for good: a hold would say less.").asException();
            case Placing.UnknownContainer() -> throw unknown(container);
        };
    }

    private LineAnswer seen(String id, ReadLine.Line told, UUID container, ScanLine.Seen seen, Caller by) {
        var inputs = new Inputs();
        var site = inputs.present("/site", seen.site(), "the id of the site where it was seen");
        known("/site", site, inputs);
        inputs.done();
        return switch (sightings.record(container, Objects.requireNonNull(site), told.at(), by)) {
            case Seeing.Recorded(var sighting, var _) -> LineAnswer.seen(id, container, sighting,
                    disputes.of(List.of(container)).containsKey(container));
            case Seeing.UnknownContainer() -> throw unknown(container);
        };
    }

    /** It has happened, so it is recorded whatever is to be said of the one that was left. */
    private LineAnswer swapped(String id, ReadLine.Line told, ScanLine.Swapped swapped, Map<String, UUID> containers,
            Caller by) {
        var stop = stops.read(swapped.site(), swapped.vehicle(), new Inputs());
        return LineAnswer.swapped(id, SwapAnswer.from(recordSwap.record(new SwapCommand(stop.site(), stop.vehicle(),
                containers.get(ScanLine.OUT), containers.get(ScanLine.IN), told.at(), true), by)));
    }

    private static RuntimeException unknown(UUID container) {
        return Problem.invalid(List.of(new FieldError("/containerId", "UNKNOWN_CONTAINER",
                container.toString(), "the id of a container"))).asException();
    }
}
