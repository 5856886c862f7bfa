package org.collarbook.portal;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.StoredContainer;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** What a customer sees of one container at one of their sites. */
record PortalContainer(UUID id, String kind, String specification, String serial, String size, @Nullable String tag,
        @Nullable PortalSite site, Status status, @Nullable YearMonth due, @Nullable LocalDate lastDay,
        boolean mayFill, boolean mayUse, List<Reason> reasons) {

    record PortalSite(UUID id, String code, String name) {}

    static PortalContainer from(StoredContainer container, Assessment assessment) {
        var identity = container.identity();
        var place = container.place();
        var due = assessment.firstDue();
        return new PortalContainer(container.id(), identity.kind(), identity.specification(), identity.serial(),
                identity.size(), identity.tag(),
                place == null ? null : new PortalSite(place.siteId(), place.siteCode(), place.siteName()),
                assessment.status(), due, due == null ? null : due.atEndOfMonth(), assessment.mayFill().allowed(),
                assessment.mayUse().allowed(), assessment.reasons());
    }
}
