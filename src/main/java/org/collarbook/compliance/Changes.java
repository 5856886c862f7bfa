package org.collarbook.compliance;

import java.util.Collection;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Journal;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** What was recorded is entered in the containers' chains, and judged: at once, or of many facts together. */
@Component
public class Changes {

    private record Gathered(Set<UUID> containers) {}

    private final Journal journal;
    private final Requirements requirements;

    Changes(Journal journal, Requirements requirements) {
        this.journal = journal;
        this.requirements = requirements;
    }

    /** Whatever the work records is entered and judged once, at its end and in its transaction. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void together(Runnable work) {
        var gathered = new Gathered(new HashSet<>());
        TransactionSynchronizationManager.bindResource(this, gathered);
        try {
            work.run();
        } finally {
            TransactionSynchronizationManager.unbindResource(this);
        }
        enter(gathered.containers);
    }

    void of(Collection<UUID> containers) {
        if (TransactionSynchronizationManager.getResource(this) instanceof Gathered(var gathered)) {
            gathered.addAll(containers);
        } else {
            enter(containers);
        }
    }

    private void enter(Collection<UUID> containers) {
        journal.enter(containers);
        requirements.reassess(containers);
    }
}
