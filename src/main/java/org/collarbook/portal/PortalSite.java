package org.collarbook.portal;

import java.util.Map;
import java.util.UUID;

import org.collarbook.regulation.Status;

/** One of a customer's sites; {@code byStatus} counts what is recorded there by the word of the day there. */
record PortalSite(UUID id, String code, String name, String zone, long containers, Map<Status, Long> byStatus) {

    static PortalSite of(UUID id, String code, String name, String zone, Map<Status, Long> byStatus) {
        return new PortalSite(id, code, name, zone, byStatus.values().stream().mapToLong(Long::longValue).sum(),
                byStatus);
    }
}
