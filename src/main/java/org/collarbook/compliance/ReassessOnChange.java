package org.collarbook.compliance;

import java.time.ZoneOffset;
import java.util.List;

import org.collarbook.custody.ContainerEmptied;
import org.collarbook.custody.ContainerFilled;
import org.collarbook.custody.ContainerGauged;
import org.collarbook.custody.ContainerMoved;
import org.collarbook.custody.ContainerSeen;
import org.collarbook.custody.SiteChanged;
import org.collarbook.holds.HoldsLifted;
import org.collarbook.holds.HoldsPlaced;
import org.collarbook.inspection.ContainerRepaired;
import org.collarbook.inspection.RequalificationRecorded;
import org.collarbook.registry.ContainerChanged;
import org.collarbook.registry.ContainerRegistered;
import org.collarbook.registry.RecordsRefiled;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** A new fact and the due month that follows from it become visible together: the same transaction writes both. */
@Component
class ReassessOnChange {

    private final Requirements requirements;
    private final SiteSweep sites;
    private final Changes changes;

    ReassessOnChange(Requirements requirements, SiteSweep sites, Changes changes) {
        this.requirements = requirements;
        this.sites = sites;
        this.changes = changes;
    }

    @EventListener
    void on(ContainerRegistered event) {
        changes.of(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerChanged event) {
        changes.ofThePast(List.of(event.containerId()), Changes.EVER);
    }

    @EventListener
    void on(ContainerMoved event) {
        changes.ofThePast(List.of(event.containerId()), event.occurredAt());
    }

    @EventListener
    void on(ContainerSeen event) {
        changes.ofThePast(List.of(event.containerId()), event.occurredAt());
    }

    /** Customer, zone and jurisdiction of a site are the site's own facts: all that stands there is judged anew. */
    @EventListener
    void on(SiteChanged event) {
        sites.begin(event.siteId());
    }

    @EventListener
    void on(ContainerFilled event) {
        changes.byFill(event.containerId());
    }

    @EventListener
    void on(ContainerEmptied event) {
        changes.of(List.of(event.containerId()));
    }

    /** It is told beside the answer and changes no judgement. */
    @EventListener
    void on(ContainerGauged event) {
        changes.enter(List.of(event.containerId()));
        requirements.touch(List.of(event.containerId()));
    }

    @EventListener
    void on(HoldsPlaced event) {
        changes.ofThePast(event.containerIds(), event.since());
    }

    /** A lift holds from now on: no fill before it is judged otherwise. */
    @EventListener
    void on(HoldsLifted event) {
        changes.of(event.containerIds());
    }

    @EventListener
    void on(RequalificationRecorded event) {
        // the day has begun nowhere on earth before
        changes.ofThePast(List.of(event.containerId()), event.since().atStartOfDay().toInstant(ZoneOffset.MAX));
    }

    @EventListener
    void on(ContainerRepaired event) {
        changes.enter(List.of(event.containerId()));
    }

    /** Whose facts count for it now may tell of the past as well. */
    @EventListener
    void on(RecordsRefiled event) {
        changes.ofThePast(event.containerIds(), Changes.EVER);
    }
}
