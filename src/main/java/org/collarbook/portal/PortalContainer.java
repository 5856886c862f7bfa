package org.collarbook.portal;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * What a customer sees of one container at one of their sites. {@code meaning} says what the status word means,
 * {@code reasons} why it is so. {@code placeDisputed}: it is recorded here, and claimed elsewhere too.
 */
record PortalContainer(UUID id, ContainerKind kind, String specification, String serial, String size,
        @Nullable String tag, @Nullable Place site, boolean placeDisputed, Status status, String meaning,
        @Nullable YearMonth due, @Nullable LocalDate lastDay, InService service, boolean mayFill, boolean mayUse,
        List<PlainReason> reasons, @Nullable LastRequalification lastRequalification, @Nullable LastFill lastFill,
        @Nullable LastReading lastReading) {

    record Place(UUID id, String code, String name) {}

    /** The latest one passed; what is not recorded of it is absent. */
    record LastRequalification(YearMonth month, @Nullable Method method, @Nullable String rin) {}

    static PortalContainer from(KnownContainer known, Assessment assessment, Lasts lasts) {
        var container = known.container();
        var marks = container.marks();
        var where = known.where();
        var due = assessment.firstDue();
        var reasons = PlainReason.of(assessment, known.facts().holds());
        return new PortalContainer(container.id(), marks.kind(), marks.specification().value().toString(),
                marks.serial().value().toString(), container.size().word(),
                container.tag() == null ? null : container.tag().value(),
                where == null ? null : new Place(where.siteId(), where.siteCode(), where.siteName()),
                known.placeDisputed(), assessment.status(), PlainReason.meaning(assessment.status()), due,
                due == null ? null : due.atEndOfMonth(), InService.of(assessment, reasons),
                assessment.mayFill().allowed(), assessment.mayUse().allowed(), reasons,
                last(known.facts().requalifications()), lasts.fill(),
                lasts.gauge() == null ? null : LastReading.from(lasts.gauge(), assessment.asOf()));
    }

    private static @Nullable LastRequalification last(@Nullable List<Requalification> history) {
        return history == null
                ? null
                : history.stream().filter(PortalContainer::isOfTheContainer)
                        .max(Comparator.comparing(Requalification::month)).map(done -> new LastRequalification(
                                done.month(), done.method(), done.rin() == null ? null : done.rin().toString()))
                        .orElse(null);
    }

    /** Work on a part is another matter. */
    private static boolean isOfTheContainer(Requalification done) {
        return done.result() == Requalification.Result.PASSED && (done.method() == null
                || done.method().isOfCylinder() || done.method().compareTo(Method.VALVE_REPLACED) < 0);
    }
}
