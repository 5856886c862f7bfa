package org.collarbook.compliance.fills;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.compliance.AsKnown;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.LoadedRuleBook;
import org.collarbook.compliance.PastFills;
import org.collarbook.compliance.fillcheck.FillCheck;
import org.collarbook.compliance.fillcheck.Liquid;
import org.collarbook.custody.Contents;
import org.collarbook.custody.FillFlag;
import org.collarbook.custody.FillFlags;
import org.collarbook.custody.Fills;
import org.collarbook.custody.PastFill;
import org.collarbook.custody.Products;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.platform.Journal;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Flags a fill when what has become known makes it one that was not allowed, and again when it was after all. */
@Component
class FlagFills implements PastFills {

    private final Fills fills;
    private final FillFlags flags;
    private final Products products;
    private final AsKnown asKnown;
    private final FillCheck check;
    private final LoadedRuleBook rules;
    private final Holds holds;
    private final Journal journal;

    FlagFills(Fills fills, FillFlags flags, Products products, AsKnown asKnown, FillCheck check, LoadedRuleBook rules,
            Holds holds, Journal journal) {
        this.holds = holds;
        this.fills = fills;
        this.flags = flags;
        this.products = products;
        this.asKnown = asKnown;
        this.check = check;
        this.rules = rules;
        this.journal = journal;
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void judge(Map<UUID, Instant> since) {
        if (!since.isEmpty()) {
            anew(fills.madeSince(since));
        }
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void judgeLast(UUID container) {
        anew(fills.lastRecorded(container).stream().toList());
    }

    private void anew(List<PastFill> past) {
        var told = flags.of(past.stream().map(PastFill::id).toList());
        var flagged = new HashSet<UUID>();
        for (var fill : past) {
            asKnown.atFill(fill).map(known -> unsaid(fill, known)).filter(why -> isNews(fill, why, told))
                    .ifPresent(why -> {
                        flags.append(fill, why, rules.id());
                        flagged.add(fill.containerId());
                        holdOverfilled(fill, why);
                    });
        }
        journal.enter(flagged);
    }

    /** Too much of it is in there still, unless it was emptied or filled anew. */
    private void holdOverfilled(PastFill fill, List<Reason> why) {
        var moment = fill.filledAt();
        if (moment != null && why.stream().anyMatch(reason -> reason.code() == ReasonCode.OVER_LIMIT)
                && fills.isLast(fill)) {
            holds.keep(fill.containerId(), HoldReason.OVERFILLED_OR_DISCHARGED,
                    "Fill " + fill.id() + ": " + fill.netLb()
                            + " lb in it, found later to be more than may be",
                    moment, fill.recordedBy());
        }
    }

    /** Why it was not allowed, but for what the fill itself says. */
    private List<Reason> unsaid(PastFill fill, KnownContainer known) {
        var code = fill.product();
        var liquid = new Liquid(code == null ? null : products.byCode(code).orElse(null), fill.specificGravity(),
                fill.liquidTemperatureF(), null);
        var refusals = Refusals.of(check.judge(known, liquid, fill.filledOn()), measured(fill));
        return refusals.stream().filter(reason -> !fill.refusedFor().contains(reason.code().name())).toList();
    }

    private static Measured measured(PastFill fill) {
        var net = fill.netLb();
        return net == null
                ? new Measured.Unknown(List.of())
                : new Measured.Known(new Contents(net, fill.grossLb(), fill.tareLb(), fill.heelLb(), fill.addedLb(),
                        fill.gallonsAdded(), fill.liquidTemperatureF()));
    }

    private static boolean isNews(PastFill fill, List<Reason> unsaid, Map<UUID, List<FillFlag>> told) {
        var before = told.getOrDefault(fill.id(), List.of());
        return !codes(unsaid).equals(before.isEmpty() ? Set.of() : codes(before.getFirst().reasons()));
    }

    private static Set<String> codes(List<Reason> reasons) {
        return reasons.stream().map(reason -> reason.code().name()).collect(Collectors.toSet());
    }
}
