package org.collarbook.registry.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Marks;
import org.collarbook.registry.PlaceClaim;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.fittings.Stop;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Service;
import org.jspecify.annotations.Nullable;

/**
 * A container as the register has it: marks in plain form, what is really stamped in {@code asStamped} where the two
 * differ, and in {@code declared} the facts that rest on a declaration. {@code placeDisputed}: the places that claim it,
 * where several do. With {@code mergedInto} the record is closed, and that one counts.
 */
public record ContainerResponse(UUID id, int version, String kind, String specification, @Nullable String maker,
        String serial, @Nullable String manufactured, @Nullable String waterCapacity, @Nullable String tare,
        @Nullable Integer servicePressure, String size, @Nullable String tag, @Nullable Boolean coated,
        @Nullable Boolean lined, @Nullable String steel, @Nullable String installation, @Nullable String reliefValve,
        @Nullable String use,
        ServiceResponse service, @Nullable Boolean owned, @Nullable String owner, @Nullable Boolean ownerConsent,
        @Nullable Boolean marksLegible, @Nullable PermitResponse permit, @Nullable String extendedPeriod,
        @Nullable YearMonth schemeDue, @Nullable LocalDate outOfServiceSince, @Nullable OutOfService outOfService,
        boolean collarRead, Map<String, String> asStamped, List<String> declared, @Nullable UUID declarationId,
        Instant registeredAt, @Nullable List<PlaceClaim> placeDisputed, @Nullable UUID mergedInto) {

    public record ServiceResponse(@Nullable String lading, @Nullable Boolean exclusive,
            @Nullable Boolean corrosionFree) {

        static ServiceResponse from(Service service) {
            return new ServiceResponse(text(service.lading()), service.exclusive(), service.corrosionFree());
        }
    }

    public record PermitResponse(@Nullable String number, @Nullable LocalDate expires,
            @Nullable Integer intervalYears) {

        static @Nullable PermitResponse from(@Nullable Permit permit) {
            return permit == null
                    ? null
                    : new PermitResponse(permit.number(), permit.expires(), permit.intervalYears());
        }
    }

    /** As recorded by a day and a reason, while no return is; {@code outOfServiceSince} is what was declared. */
    public record OutOfService(LocalDate since, String reason) {

        static @Nullable OutOfService from(@Nullable Stop stop) {
            return stop == null ? null : new OutOfService(stop.since(), stop.reason());
        }
    }

    public static ContainerResponse from(RegisteredContainer container, @Nullable Stop stop,
            @Nullable List<PlaceClaim> claims, @Nullable UUID mergedInto) {
        var marks = container.marks();
        var known = container.particulars();
        var pressure = marks.servicePressure();
        return new ContainerResponse(container.id(), container.version(), marks.kind().name(),
                marks.specification().value().toString(), text(marks.maker()), marks.serial().value().value(),
                value(marks.manufactured()), value(marks.waterCapacity()), value(marks.tare()),
                pressure == null ? null : pressure.psig(), container.size().word(), text(container.tag()),
                known.coated(), known.lined(), text(known.steel()), text(known.installation()),
                text(known.reliefValve()), text(known.use()),
                ServiceResponse.from(known.service()), known.ownership().owned(), known.ownership().owner(),
                known.ownership().consent(), known.marksLegible(), PermitResponse.from(known.permit()),
                text(known.extendedPeriod()), known.schemeDue(), known.outOfServiceSince(),
                OutOfService.from(stop),
                known.collarRead(), stamps(marks),
                container.declared().stream().sorted().map(DeclarableFact::word).toList(), container.declaration(),
                container.registeredAt(), claims, mergedInto);
    }

    private static Map<String, String> stamps(Marks marks) {
        var stamps = new LinkedHashMap<String, String>();
        stamp(stamps, "specification", marks.specification());
        stamp(stamps, "serial", marks.serial());
        stamp(stamps, "manufactured", marks.manufactured());
        stamp(stamps, "waterCapacity", marks.waterCapacity());
        stamp(stamps, "tare", marks.tare());
        return stamps;
    }

    private static void stamp(Map<String, String> stamps, String field, @Nullable Stamped<?> mark) {
        if (mark != null && mark.raw() != null) {
            stamps.put(field, mark.asStamped());
        }
    }

    private static @Nullable String value(@Nullable Stamped<?> mark) {
        return mark == null ? null : text(mark.value());
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }
}
