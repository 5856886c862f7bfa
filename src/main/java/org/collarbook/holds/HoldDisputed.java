package org.collarbook.holds;

import java.time.Clock;

import org.collarbook.registry.IdentityDisputed;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/** Two that were taken for one are held until somebody says which is which. */
@Component
class HoldDisputed {

    private final Holds holds;
    private final Clock clock;

    HoldDisputed(Holds holds, Clock clock) {
        this.holds = holds;
        this.clock = clock;
    }

    @EventListener
    void on(IdentityDisputed event) {
        event.containerIds().forEach(container -> holds.keep(container, HoldReason.IDENTITY_DISPUTED, event.note(),
                clock.instant(), event.by().id()));
    }
}
