package org.collarbook.compliance.swaps;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.custody.Movements;
import org.collarbook.custody.Moving;
import org.collarbook.custody.NewMovement;
import org.collarbook.custody.Place;
import org.collarbook.custody.Places;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Journal;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Reason;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Records both movements of a swap while both containers are locked, or nothing. */
@Component
public class RecordSwap {

    private final Containers containers;
    private final Movements movements;
    private final Places places;
    private final Replacement replacement;
    private final Swaps swaps;
    private final Journal journal;

    RecordSwap(Containers containers, Movements movements, Places places, Replacement replacement, Swaps swaps,
            Journal journal) {
        this.containers = containers;
        this.movements = movements;
        this.places = places;
        this.replacement = replacement;
        this.swaps = swaps;
        this.journal = journal;
    }

    /** One of the two, as it was moved; {@code moved} is false where another movement decides its place. */
    public record Moved(UUID containerId, UUID movementId, boolean moved, boolean disputed) {}

    /** {@code refusals} are why the one that was left may not be used there, {@code told} what is to be said beside. */
    public record Recorded(UUID id, SwapCommand swap, @Nullable Moved out, @Nullable Moved in, List<Reason> refusals,
            List<Reason> told) {

        public Recorded {
            refusals = List.copyOf(refusals);
            told = List.copyOf(told);
        }
    }

    /** The place that the register has of one of the two, and the one where it is told to have been. */
    record Disputed(String container, UUID containerId, NamedSite recordedSite, NamedSite statedSite) {

        record NamedSite(UUID id, String code, String name) {

            static NamedSite from(Place place) {
                return new NamedSite(place.siteId(), place.code(), place.name());
            }
        }
    }

    /** Refuses by problem, before anything is written. */
    @Transactional(propagation = Propagation.MANDATORY, noRollbackFor = ProblemException.class)
    public Recorded record(SwapCommand swap, Caller by) {
        var out = swap.out();
        var in = swap.in();
        lock(swap);
        refuseDisputed(swap);
        var judged = in == null ? new Replacement.Judged(List.of(), List.of()) : replacement.judge(in, swap);
        if (!judged.refusals().isEmpty() && !swap.happened()) {
            throw Problem.conflict("REPLACEMENT_NOT_ALLOWED", "The container that is to be left must not be used at "
                    + swap.site().code() + ". Nothing was stored; see reasons. If it was left there, record that it"
                    + " happened.").with("reasons", judged.refusals()).asException();
        }
        var taken = out == null ? null : move(out, swap.site(), swap.vehicle(), swap, by);
        var left = in == null ? null : move(in, swap.vehicle(), swap.site(), swap, by);
        var id = swaps.append(swap, taken, left, judged.refusals(), by);
        journal.enter(of(swap));
        return new Recorded(id, swap, taken, left, judged.refusals(), judged.told());
    }

    private static List<UUID> of(SwapCommand swap) {
        var both = new ArrayList<UUID>(2);
        if (swap.out() != null) {
            both.add(swap.out());
        }
        if (swap.in() != null) {
            both.add(swap.in());
        }
        return both;
    }

    private void lock(SwapCommand swap) {
        var both = of(swap);
        if (both.isEmpty()) {
            throw new IllegalArgumentException("a swap of nothing");
        }
        if (both.getFirst().equals(swap.in()) && both.getFirst().equals(swap.out())) {
            throw Problem.invalid("/in", "SAME_CONTAINER", both.getFirst().toString(),
                    "another container than the one taken away").asException();
        }
        var known = containers.lock(both);
        var unknown = both.stream().filter(id -> !known.contains(id)).map(id -> new FieldError(
                (id.equals(swap.out()) ? "/out" : "/in") + "/containerId", "UNKNOWN_CONTAINER", id.toString(),
                "the id of a container")).toList();
        if (!unknown.isEmpty()) {
            throw Problem.invalid(unknown).asException();
        }
        // held already: refuses a record that was merged into another
        both.forEach(containers::lock);
        both.forEach(this::refuseTank);
    }

    private void refuseTank(UUID id) {
        if (containers.require(id).marks().kind() == ContainerKind.STATIONARY_TANK) {
            throw Problem.conflict("NOT_FOR_THIS_KIND", "Container " + id + " is a stationary tank: that it is moved by"
                    + " road is recorded as a transport record (49 CFR 173.315(j)), not as a swap. Nothing was stored.")
                    .asException();
        }
    }

    private void refuseDisputed(SwapCommand swap) {
        var disputed = new ArrayList<Disputed>();
        if (swap.out() != null) {
            elsewhere("out", swap.out(), swap.site(), swap, disputed);
        }
        if (swap.in() != null) {
            elsewhere("in", swap.in(), swap.vehicle(), swap, disputed);
        }
        if (!disputed.isEmpty()) {
            var errors = disputed.stream().map(one -> new FieldError("/" + one.container, "PLACE_DISPUTED",
                    one.statedSite.id().toString(), "the site where the register has it at that time, "
                            + one.recordedSite.id() + ": look at the container and record the movement that is"
                            + " missing"))
                    .toList();
            throw new Problem(HttpStatus.CONFLICT, "PLACE_DISPUTED", "The register has a container of this swap"
                    + " elsewhere. Nothing was stored: look at it, record the movement that is missing, then this.",
                    errors, Map.of("disputed", disputed)).asException();
        }
    }

    private void elsewhere(String container, UUID id, Place stated, SwapCommand swap, List<Disputed> disputed) {
        movements.elsewhere(id, stated.siteId(), swap.at()).flatMap(places::site)
                .ifPresent(recorded -> disputed.add(new Disputed(container, id, Disputed.NamedSite.from(recorded),
                        Disputed.NamedSite.from(stated))));
    }

    private Moved move(UUID container, Place from, Place to, SwapCommand swap, Caller by) {
        return switch (movements.record(new NewMovement(container, to.siteId(), swap.at(), from.siteId()), by)) {
            case Moving.Recorded(var id, var moved, var disputed) -> new Moved(container, id, moved, disputed);
            case Moving.Disputed _,Moving.UnknownContainer _ -> throw new IllegalStateException(
                    "container " + container + " is locked and stood there");
        };
    }
}
