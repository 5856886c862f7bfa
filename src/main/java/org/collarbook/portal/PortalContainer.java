package org.collarbook.portal;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** What a customer sees of one container at one of their sites. */
record PortalContainer(UUID id, ContainerKind kind, String specification, String serial, String size,
        @Nullable String tag,
        @Nullable PortalSite site, Status status, @Nullable YearMonth due, @Nullable LocalDate lastDay,
        boolean mayFill, boolean mayUse, List<Reason> reasons) {

    record PortalSite(UUID id, String code, String name) {}

    static PortalContainer from(KnownContainer known, Assessment assessment) {
        var container = known.container();
        var marks = container.marks();
        var where = known.where();
        var due = assessment.firstDue();
        return new PortalContainer(container.id(), marks.kind(), marks.specification().value().toString(),
                marks.serial().value().toString(), container.size().word(),
                container.tag() == null ? null : container.tag().value(),
                where == null ? null : new PortalSite(where.siteId(), where.siteCode(), where.siteName()),
                assessment.status(), due, due == null ? null : due.atEndOfMonth(), assessment.mayFill().allowed(),
                assessment.mayUse().allowed(), assessment.reasons());
    }
}
