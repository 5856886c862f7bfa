package org.collarbook.compliance;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Journal;
import org.collarbook.registry.Absorbed;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * What was recorded is entered in the containers' chains, and judged, with the fills of before where it may tell of the
 * past: at once, or of many facts together.
 */
@Component
public class Changes {

    private record Gathered(Set<UUID> containers, Set<UUID> past) {}

    private final Journal journal;
    private final Requirements requirements;
    private final PastFills fills;
    private final Absorbed absorbed;

    Changes(Journal journal, Requirements requirements, PastFills fills, Absorbed absorbed) {
        this.absorbed = absorbed;
        this.journal = journal;
        this.requirements = requirements;
        this.fills = fills;
    }

    /** Whatever the work records is entered and judged once, at its end and in its transaction. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void together(Runnable work) {
        var gathered = new Gathered(new HashSet<>(), new HashSet<>());
        TransactionSynchronizationManager.bindResource(this, gathered);
        try {
            work.run();
        } finally {
            TransactionSynchronizationManager.unbindResource(this);
        }
        settle(gathered.containers);
        fills.judge(gathered.past);
    }

    void of(Collection<UUID> containers) {
        if (TransactionSynchronizationManager.getResource(this) instanceof Gathered(var gathered, var _)) {
            gathered.addAll(containers);
        } else {
            settle(containers);
        }
    }

    void ofThePast(Collection<UUID> containers) {
        of(containers);
        if (TransactionSynchronizationManager.getResource(this) instanceof Gathered(var _, var past)) {
            past.addAll(containers);
        } else {
            fills.judge(containers);
        }
    }

    /** The past of the other fills is what it was. */
    void byFill(UUID container) {
        of(List.of(container));
        if (TransactionSynchronizationManager.getResource(this) instanceof Gathered(var _, var past)) {
            past.add(container);
        } else {
            fills.judgeLast(container);
        }
    }

    private void settle(Collection<UUID> containers) {
        enter(containers);
        requirements.reassess(containers);
    }

    void enter(Collection<UUID> containers) {
        var chains = new HashSet<>(containers);
        // what is done about a fact is entered where the fact was recorded
        chains.addAll(absorbed.recordedOn(containers));
        journal.enter(chains);
    }
}
