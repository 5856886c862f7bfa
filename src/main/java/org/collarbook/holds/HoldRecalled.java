package org.collarbook.holds;

import java.util.List;

import org.collarbook.registry.ContainerChanged;
import org.collarbook.registry.ContainerRegistered;
import org.collarbook.registry.RecordsRefiled;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** A container that a running recall matches is never in the register without its hold. */
@Component
class HoldRecalled {

    private final Recalls recalls;

    HoldRecalled(Recalls recalls) {
        this.recalls = recalls;
    }

    @EventListener
    void on(ContainerRegistered event) {
        recalls.holdMatching(List.of(event.containerId()));
    }

    /** A record that is open again is one of the register's once more. */
    @EventListener
    void on(RecordsRefiled event) {
        recalls.holdMatching(event.containerIds());
    }

    /** Marks that were corrected may be those that a recall names. */
    @EventListener
    void on(ContainerChanged event) {
        recalls.holdMatching(List.of(event.containerId()));
    }
}
