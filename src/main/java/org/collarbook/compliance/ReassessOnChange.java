package org.collarbook.compliance;

import java.util.List;

import org.collarbook.custody.ContainerFilled;
import org.collarbook.custody.ContainerMoved;
import org.collarbook.inspection.RequalificationRecorded;
import org.collarbook.registry.ContainerChanged;
import org.collarbook.registry.ContainerRegistered;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** A new fact and the due month that follows from it become visible together: the same transaction writes both. */
@Component
class ReassessOnChange {

    private final Requirements requirements;

    ReassessOnChange(Requirements requirements) {
        this.requirements = requirements;
    }

    @EventListener
    void on(ContainerRegistered event) {
        requirements.reassess(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerChanged event) {
        requirements.reassess(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerMoved event) {
        requirements.reassess(List.of(event.containerId()));
    }

    @EventListener
    void on(ContainerFilled event) {
        requirements.reassess(List.of(event.containerId()));
    }

    @EventListener
    void on(RequalificationRecorded event) {
        requirements.reassess(List.of(event.containerId()));
    }
}
