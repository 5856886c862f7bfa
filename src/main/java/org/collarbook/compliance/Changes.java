package org.collarbook.compliance;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

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

    private record Gathered(Set<UUID> containers, Map<UUID, Instant> past) {}

    /** Of what tells no moment: it counts as if it had always been so. */
    public static final Instant EVER = Instant.parse("1900-01-01T00:00:00Z");

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
        var gathered = new Gathered(new HashSet<>(), new HashMap<>());
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

    /** A fill from that moment on may be another one by what is known now. */
    void ofThePast(Collection<UUID> containers, Instant since) {
        of(containers);
        if (TransactionSynchronizationManager.getResource(this) instanceof Gathered(var _, var past)) {
            containers.forEach(id -> past.merge(id, since, (one, other) -> one.isBefore(other) ? one : other));
        } else {
            fills.judge(containers.stream().distinct().collect(Collectors.toMap(id -> id, id -> since)));
        }
    }

    /** The past of the other fills is what it was; one of many was judged by its own moment. */
    void byFill(UUID container) {
        of(List.of(container));
        if (!TransactionSynchronizationManager.hasResource(this)) {
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
