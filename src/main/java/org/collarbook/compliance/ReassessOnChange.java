package org.collarbook.compliance;

import java.util.HashSet;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.ContainerEmptied;
import org.collarbook.custody.ContainerFilled;
import org.collarbook.custody.ContainerMoved;
import org.collarbook.custody.Places;
import org.collarbook.custody.SiteChanged;
import org.collarbook.holds.HoldsLifted;
import org.collarbook.holds.HoldsPlaced;
import org.collarbook.inspection.RequalificationRecorded;
import org.collarbook.registry.ContainerChanged;
import org.collarbook.registry.ContainerRegistered;
import org.collarbook.registry.Absorbed;
import org.collarbook.registry.RecordsRefiled;
import org.collarbook.platform.Journal;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** A new fact and the due month that follows from it become visible together: the same transaction writes both. */
@Component
class ReassessOnChange {

    private final Requirements requirements;
    private final Places places;
    private final Journal journal;
    private final Absorbed absorbed;

    ReassessOnChange(Requirements requirements, Places places, Journal journal, Absorbed absorbed) {
        this.absorbed = absorbed;
        this.journal = journal;
        this.requirements = requirements;
        this.places = places;
    }

    @EventListener
    void on(ContainerRegistered event) {
        changed(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerChanged event) {
        changed(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerMoved event) {
        changed(List.of(event.containerId()));
    }

    /** Customer, zone and jurisdiction of a site are the site's own facts: all that stands there is judged anew. */
    @EventListener
    void on(SiteChanged event) {
        requirements.reassess(places.containersAt(event.siteId()));
    }

    @EventListener
    void on(ContainerFilled event) {
        changed(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerEmptied event) {
        changed(List.of(event.containerId()));
    }

    @EventListener
    void on(HoldsPlaced event) {
        changed(event.containerIds());
    }

    @EventListener
    void on(HoldsLifted event) {
        changed(event.containerIds());
    }

    @EventListener
    void on(RequalificationRecorded event) {
        changed(List.of(event.containerId()));
    }

    @EventListener
    void on(RecordsRefiled event) {
        changed(event.containerIds());
    }

    /** What was recorded is entered in the containers' chains, and judged. */
    private void changed(List<UUID> containers) {
        var chains = new HashSet<>(containers);
        // what is done about a fact is entered where the fact was recorded
        chains.addAll(absorbed.recordedOn(containers));
        journal.enter(chains);
        requirements.reassess(containers);
    }
}
