package org.collarbook.compliance;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Problem;
import org.collarbook.registry.FillSafeguard;
import org.collarbook.regulation.Permission;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.RuleBook;
import org.springframework.stereotype.Component;

/** Judges what an act is about before it and after it. */
@Component
class NoFillAllowedUnseen implements FillSafeguard {

    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;

    NoFillAllowedUnseen(KnownContainers containers, Requirements requirements, RuleBook rules) {
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    @Override
    public Watch watch(Collection<UUID> before) {
        var refusals = new ArrayList<Reason>();
        containers.byIds(before).forEach(known -> refusals.addAll(mayFill(known).reasons()));
        return new Watch() {

            @Override
            public List<String> refusedFor() {
                return refusals.stream().map(reason -> reason.code().name()).distinct().sorted().toList();
            }

            @Override
            public void refuseAllowed(Collection<UUID> after) {
                if (!refusals.isEmpty()) {
                    containers.byIds(after).stream().filter(known -> mayFill(known).allowed()).findFirst()
                            .ifPresent(allowed -> refuse(allowed, refusals));
                }
            }
        };
    }

    private Permission mayFill(KnownContainer known) {
        return rules.assess(known.facts(), requirements.today(known)).mayFill();
    }

    private static void refuse(KnownContainer allowed, List<Reason> refusals) {
        throw Problem.conflict("FILL_WOULD_BE_ALLOWED", "Container " + allowed.id() + " might be filled afterwards,"
                + " though before a fill was refused; reasons has why. Nothing was stored: where that is right, say so"
                + " with fillWillBeAllowed.").with("container", allowed.id())
                .with("reasons", refusals.stream().distinct().toList()).asException();
    }
}
