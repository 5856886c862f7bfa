package org.collarbook.compliance.fillcheck;

import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.regulation.ContainerKind;
import org.jspecify.annotations.Nullable;

/** What tells a container from others that bear the same serial number. */
record Candidate(UUID id, ContainerKind kind, String specification, @Nullable String maker, String serial,
        @Nullable YearMonth manufactured, String size, @Nullable String tag, @Nullable String site) {

    static Candidate from(KnownContainer known) {
        var container = known.container();
        var marks = container.marks();
        var maker = marks.maker();
        var manufactured = marks.manufactured();
        var tag = container.tag();
        var where = known.where();
        return new Candidate(container.id(), marks.kind(), marks.specification().value().toString(),
                maker == null ? null : maker.value(), marks.serial().value().toString(),
                manufactured == null ? null : manufactured.value(), container.size().word(),
                tag == null ? null : tag.value(), where == null ? null : where.siteCode());
    }
}
