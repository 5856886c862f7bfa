package org.collarbook.registry.fittings;

/** What is recorded of the parts of a container. A valve with an overfilling prevention device in it is the device. */
public enum PartKind {
    RELIEF_VALVE,
    SERVICE_VALVE,
    OVERFILL_PREVENTION_DEVICE,
    GAUGE,
    EXEMPTION_LABEL
}
