package org.collarbook.compliance;

import java.util.List;
import java.util.UUID;

import org.collarbook.custody.ContainerEmptied;
import org.collarbook.custody.ContainerFilled;
import org.collarbook.custody.ContainerMoved;
import org.collarbook.custody.Places;
import org.collarbook.custody.SiteChanged;
import org.collarbook.holds.HoldsLifted;
import org.collarbook.holds.HoldsPlaced;
import org.collarbook.inspection.ContainerRepaired;
import org.collarbook.inspection.RequalificationRecorded;
import org.collarbook.registry.ContainerChanged;
import org.collarbook.registry.ContainerRegistered;
import org.collarbook.platform.Journal;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** A new fact and the due month that follows from it become visible together: the same transaction writes both. */
@Component
class ReassessOnChange {

    private final Requirements requirements;
    private final Places places;
    private final Journal journal;
    private final PastFills fills;

    ReassessOnChange(Requirements requirements, Places places, Journal journal, PastFills fills) {
        this.fills = fills;
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
        fills.judge(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerMoved event) {
        changed(List.of(event.containerId()));
        fills.judge(List.of(event.containerId()));
    }

    /** Customer, zone and jurisdiction of a site are the site's own facts: all that stands there is judged anew. */
    @EventListener
    void on(SiteChanged event) {
        requirements.reassess(places.containersAt(event.siteId()));
    }

    @EventListener
    void on(ContainerFilled event) {
        changed(List.of(event.containerId()));
        fills.judgeLast(event.containerId());
    }

    @EventListener
    void on(ContainerEmptied event) {
        changed(List.of(event.containerId()));
    }

    @EventListener
    void on(HoldsPlaced event) {
        changed(event.containerIds());
        fills.judge(event.containerIds());
    }

    /** A lift holds from now on: no fill before it is judged otherwise. */
    @EventListener
    void on(HoldsLifted event) {
        changed(event.containerIds());
    }

    @EventListener
    void on(RequalificationRecorded event) {
        changed(List.of(event.containerId()));
        fills.judge(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerRepaired event) {
        journal.enter(List.of(event.containerId()));
    }

    /** What was recorded is entered in the containers' chains, and judged. */
    private void changed(List<UUID> containers) {
        journal.enter(containers);
        requirements.reassess(containers);
    }
}
