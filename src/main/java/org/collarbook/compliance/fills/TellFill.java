package org.collarbook.compliance.fills;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.fillcheck.FillCheck;
import org.collarbook.compliance.fillcheck.Liquid;
import org.collarbook.compliance.fillcheck.Liquids;
import org.collarbook.custody.Contents;
import org.collarbook.custody.Movements;
import org.collarbook.custody.Place;
import org.collarbook.custody.PlaceDisputes;
import org.collarbook.custody.Places;
import org.collarbook.custody.Products;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Records a fill that is told after it has happened. It is judged by what stood at its own moment and is a fact whatever
 * comes of that: one that was not allowed bears the reasons and puts a hold on the container.
 */
@Component
public class TellFill {

    private final RecordFill recordFill;
    private final Containers containers;
    private final KnownContainers known;
    private final Holds holds;
    private final Movements movements;
    private final Places places;
    private final PlaceDisputes disputes;
    private final Products products;
    private final Liquids liquids;
    private final FillCheck check;

    TellFill(RecordFill recordFill, Containers containers, KnownContainers known, Holds holds, Movements movements,
            Places places, PlaceDisputes disputes, Products products, Liquids liquids, FillCheck check) {
        this.disputes = disputes;
        this.recordFill = recordFill;
        this.containers = containers;
        this.known = known;
        this.holds = holds;
        this.movements = movements;
        this.places = places;
        this.products = products;
        this.liquids = liquids;
        this.check = check;
    }

    /**
     * The command names its container by id. Refuses by problem, before anything is written: an unknown container, a
     * moment before it was made or at which a fill is recorded already, and what cannot have been read.
     */
    @Transactional(propagation = Propagation.MANDATORY, noRollbackFor = ProblemException.class)
    public RecordFill.Recorded tell(FillCommand command, Caller by) {
        var container = asItWas(command.id(), command.filledAt());
        var inputs = new Inputs();
        var day = RecordFill.day(command, container, inputs);
        var code = inputs.optional("/product", command.product(), 40);
        boolean unknownProduct = code != null && products.byCode(code).isEmpty();
        var liquid = liquids.read("/", unknownProduct ? null : code, command.specificGravity(),
                command.temperatureF(), inputs);
        var tare = container.container().marks().tare();
        var measured = Measured.of(command.measure(), tare == null ? null : tare.value(), liquid, inputs);
        inputs.done();
        var judgement = check.judge(container,
                liquids.into(container, liquid, command.measure().heelLb(), command.filledAt()), day);
        var refusals = refusals(command, unknownProduct, Refusals.of(judgement, measured));
        if (command.observedOverfill() && refusals.isEmpty() && measured instanceof Measured.Known(var contents)) {
            throw FillRefusal.notOverfilled(contents);
        }
        return recordFill.append(command, true, day, contents(command, measured, liquid), judgement, refusals, by);
    }

    private static List<Reason> refusals(FillCommand command, boolean unknownProduct, List<Reason> judged) {
        var refusals = new ArrayList<>(judged);
        if (unknownProduct) {
            refusals.add(ReasonCode.PRODUCT_UNKNOWN.reason());
        }
        if (!Boolean.TRUE.equals(command.lookedAt())) {
            // 49 CFR 173.301(a)(2) asks for the look and names the defects in one sentence
            refusals.add(ReasonCode.NOT_LOOKED_AT.citing(HoldReason.VALVE_DEFECT.citation()));
        }
        return refusals;
    }

    private static Contents contents(FillCommand command, Measured measured, Liquid liquid) {
        return switch (measured) {
            case Measured.Known(var contents) -> contents;
            case Measured.Unknown _ -> command.measure().unknown(liquid.temperatureF());
        };
    }

    private KnownContainer asItWas(@Nullable UUID id, Instant at) {
        if (id == null || !containers.lock(id)) {
            throw Problem.notFound("container").asException();
        }
        var now = known.byId(id).orElseThrow();
        var standing = holds.standingAt(id, at).stream().map(hold -> new StandingHold(hold.reason().name(), null,
                hold.reason().sentence(), hold.reason().citation())).toList();
        var where = now.where();
        var then = movements.placeAt(id, at).flatMap(places::site);
        var facts = now.facts().toBuilder().holds(standing);
        boolean unclear = disputes.isAcrossBorders(id, at);
        then.ifPresent(place -> facts.jurisdiction(unclear ? null : place.jurisdiction()));
        return new KnownContainer(now.container(), then.map(TellFill::where).orElse(where), now.placeDisputed(),
                facts.build(), now.declarers());
    }

    private static KnownContainer.Where where(Place place) {
        return new KnownContainer.Where(place.siteId(), place.code(), place.name(), place.zone(), place.customerId());
    }
}
