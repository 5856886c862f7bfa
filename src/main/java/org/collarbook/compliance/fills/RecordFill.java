package org.collarbook.compliance.fills;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.access.Caller;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.LoadedRuleBook;
import org.collarbook.compliance.fillcheck.ContainerFinder;
import org.collarbook.compliance.fillcheck.FillCheck;
import org.collarbook.compliance.fillcheck.Judgement;
import org.collarbook.compliance.fillcheck.Liquids;
import org.collarbook.compliance.training.Trainings;
import org.collarbook.custody.Contents;
import org.collarbook.custody.FillChecks;
import org.collarbook.custody.Fills;
import org.collarbook.custody.MeasuredFill;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers;
import org.collarbook.registry.Tags;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Judges a fill and records it while the container is locked: whatever was committed about it before is seen, and
 * nothing about it is committed in between.
 */
@Component
public class RecordFill {

    private static final int LONGEST_NOTE = 1000;

    private final ContainerFinder finder;
    private final Containers containers;
    private final KnownContainers known;
    private final Liquids liquids;
    private final FillCheck check;
    private final Fills fills;
    private final Holds holds;
    private final Trainings trainings;
    private final LoadedRuleBook rules;
    private final Tags tags;
    private final Clock clock;

    RecordFill(ContainerFinder finder, Containers containers, KnownContainers known, Liquids liquids, FillCheck check,
            Fills fills, Holds holds, Trainings trainings, LoadedRuleBook rules, Tags tags, Clock clock) {
        this.tags = tags;
        this.trainings = trainings;
        this.finder = finder;
        this.containers = containers;
        this.known = known;
        this.liquids = liquids;
        this.check = check;
        this.fills = fills;
        this.holds = holds;
        this.rules = rules;
        this.clock = clock;
    }

    /**
     * A fill as recorded; {@code hold} is the one that it has placed where it was not allowed for the {@code refusals},
     * {@code leakHold} that of a leak; {@code told} is what is to be said of it beside.
     */
    public record Recorded(MeasuredFill fill, @Nullable String product, List<Reason> told, @Nullable UUID hold,
            @Nullable UUID leakHold, List<Reason> refusals) {

        public Recorded {
            told = List.copyOf(told);
            refusals = List.copyOf(refusals);
        }
    }

    @Transactional(propagation = Propagation.MANDATORY)
    Recorded record(FillCommand command, Caller by) {
        var container = locked(command);
        var inputs = new Inputs();
        var day = day(command, container, inputs);
        var liquid = liquids.read("/", command.product(), command.specificGravity(), command.temperatureF(), inputs);
        var tare = container.container().marks().tare();
        var measured = Measured.of(command.measure(), tare == null ? null : tare.value(), liquid, inputs);
        inputs.done();
        var judgement = check.judge(container,
                liquids.into(container, liquid, command.measure().heelLb(), command.filledAt()), day);
        var contents = measured instanceof Measured.Known(var known) ? known : null;
        var refusals = Refusals.of(judgement, measured);
        if (contents == null || !refusals.isEmpty() && !command.observedOverfill()) {
            throw FillRefusal.of(judgement, refusals, contents);
        }
        if (command.observedOverfill() && refusals.isEmpty()) {
            throw FillRefusal.notOverfilled(contents);
        }
        return append(command, false, day, contents, judgement, refusals, by);
    }

    Recorded append(FillCommand command, boolean afterwards, LocalDate day, Contents contents, Judgement judgement,
            List<Reason> refusals, Caller by) {
        var container = judgement.known();
        var product = judgement.liquid().product();
        var where = container.where();
        var fill = new MeasuredFill(Ids.next(), container.id(), command.filledAt(), day, contents,
                product == null ? null : product.id(), judgement.liquid().specificGravity(),
                judgement.limit() instanceof FillingLimit.Limit limit ? limit.maxNet() : null, command.lookedAt(),
                command.leakChecked(), command.leakFound(), command.filledBy(), command.observedOverfill(), afterwards,
                refusals.stream().map(Reason::code).distinct().toList(), where == null ? null : where.siteId(),
                rules.id());
        fills.append(fill, by);
        return new Recorded(fill, product == null ? null : product.code(), told(fill),
                refusals.isEmpty() ? null : notAllowed(fill, command.product(), by),
                Boolean.TRUE.equals(command.leakFound())
                        ? hold(fill, HoldReason.LEAKING, "Fill " + fill.id() + ": it was found to leak afterwards", by)
                        : null,
                refusals);
    }

    private List<Reason> told(MeasuredFill fill) {
        var told = new ArrayList<Reason>();
        if (fill.leakChecked() == null) {
            told.add(ReasonCode.LEAK_CHECK_NOT_RECORDED.citing(FillChecks.STAND.leakCheckAfter()));
        }
        if (Boolean.TRUE.equals(fill.leakFound())) {
            told.add(ReasonCode.LEAK_FOUND.citing(HoldReason.LEAKING.citation()));
        }
        if (fill.filledBy() != null) {
            trainings.ofFiller(fill.filledBy(), fill.filledOn()).ifPresent(told::add);
        }
        return told;
    }

    private UUID notAllowed(MeasuredFill fill, @Nullable String product, Caller by) {
        boolean tooMuch = fill.observedOverfill() || fill.refusedFor().contains(ReasonCode.OVER_LIMIT);
        var net = fill.contents().netLb();
        var note = "Fill " + fill.id() + ": " + (net == null ? "nobody knows how much is" : net + " lb") + " in it, "
                + "the limit " + (fill.mostNetLb() == null ? "not known" : fill.mostNetLb() + " lb")
                + (fill.toldAfterwards() ? "; told afterwards, not allowed: " + words(fill.refusedFor()) : "")
                + (fill.refusedFor().contains(ReasonCode.PRODUCT_UNKNOWN) ? "; product told: " + product : "");
        return hold(fill, tooMuch ? HoldReason.OVERFILLED_OR_DISCHARGED : HoldReason.FILLED_NOT_ALLOWED, note, by);
    }

    private UUID hold(MeasuredFill fill, HoldReason reason, String note, Caller by) {
        return holds.keep(fill.containerId(), reason,
                note.length() > LONGEST_NOTE ? note.substring(0, LONGEST_NOTE) : note, fill.filledAt(), by.id());
    }

    private static String words(List<ReasonCode> codes) {
        return codes.stream().map(Enum::name).collect(Collectors.joining(", "));
    }

    private KnownContainer locked(FillCommand command) {
        var which = command.which();
        if (which != null && which.tag() != null) {
            tags.refuseMovedSince(which.tag(), command.filledAt());
        }
        var id = which == null ? command.id() : finder.one(which).id();
        if (id == null || !containers.lock(id)) {
            throw Problem.notFound("container").asException();
        }
        var container = known.byId(id).orElseThrow();
        var holds = container.facts().holds();
        // a hold that stands refuses a fill however early the fill is said to have been
        var standing = holds == null
                ? null
                : holds.stream().map(hold -> new StandingHold(hold.reason(), null, hold.text(), hold.citation()))
                        .toList();
        return container.with(container.facts().toBuilder().holds(standing).build());
    }

    static LocalDate day(FillCommand command, KnownContainer container, Inputs inputs) {
        var where = container.where();
        ZoneId zone = where == null ? ZoneOffset.UTC : where.zone();
        var day = LocalDate.ofInstant(command.filledAt(), zone);
        var made = container.container().marks().manufactured();
        if (made != null && day.isBefore(made.value().atDay(1))) {
            inputs.refuse("/filledAt", "BEFORE_MANUFACTURE", command.filledAt().toString(),
                    "not before the original test in " + made.value());
        }
        return day;
    }
}
