package org.collarbook.registry.web;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.Ownership;
import org.collarbook.registry.Particulars;
import org.collarbook.registry.StampedMarks;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A container as read off its collar or data plate, each mark as stamped; what is absent or null is not known. */
@Schema(requiredProperties = {"kind", "specification", "serial"})
record ContainerRequest(@Nullable String kind, @Nullable String specification, @Nullable String maker,
        @Nullable String serial, @Nullable String manufactured, @Nullable String waterCapacity, @Nullable String tare,
        @Nullable String servicePressure, @Nullable String tag, @Nullable Boolean coated, @Nullable Boolean lined,
        @Nullable String steel, @Nullable String installation, @Nullable String reliefValve,
        @Nullable String use, @Nullable ServiceRequest service,
        @Nullable Boolean owned, @Nullable String owner, @Nullable Boolean ownerConsent,
        @Nullable Boolean marksLegible, @Nullable PermitRequest permit, @Nullable String extendedPeriod,
        @Nullable YearMonth schemeDue, @Nullable LocalDate outOfServiceSince, @Nullable Boolean collarRead,
        @Nullable String reason) {

    record ServiceRequest(@Nullable String lading, @Nullable Boolean exclusive, @Nullable Boolean corrosionFree) {}

    record PermitRequest(@Nullable String number, @Nullable LocalDate expires, @Nullable Integer intervalYears) {}

    NewContainer toRegistration(LocalDate today) {
        var inputs = new Inputs();
        if (reason != null) {
            inputs.refuse("/reason", "NOT_ALLOWED", reason, "no reason: nothing is corrected by a registration");
        }
        return content(today, inputs);
    }

    NewContainer toCorrection(LocalDate today) {
        var inputs = new Inputs();
        inputs.required("/reason", reason, 1000);
        return content(today, inputs);
    }

    private NewContainer content(LocalDate today, Inputs inputs) {
        var reading = new StampedMarks(kind, specification, maker, serial, manufactured, waterCapacity, tare,
                servicePressure).read(today);
        inputs.refuse(reading.refusals());
        var particulars = particulars(today, inputs);
        var readTag = tag(inputs);
        inputs.done();
        var marks = reading.marks();
        if (marks == null) {
            throw new IllegalStateException("marks were neither read nor refused");
        }
        return NewContainer.of(marks, particulars, readTag);
    }

    private Particulars particulars(LocalDate today, Inputs inputs) {
        return new Particulars(coated, lined, inputs.word("/steel", steel, Steel.class),
                inputs.word("/installation", installation, Installation.class),
                inputs.word("/reliefValve", reliefValve, ReliefValve.class),
                inputs.word("/use", use, Use.class),
                service(inputs), new Ownership(owned, inputs.optional("/owner", owner, 200), ownerConsent),
                marksLegible, permit(inputs), inputs.word("/extendedPeriod", extendedPeriod, ExtendedPeriod.class),
                inRange("/schemeDue", schemeDue, inputs), outOfServiceSince(today, inputs),
                Boolean.TRUE.equals(collarRead));
    }

    private Service service(Inputs inputs) {
        if (service == null) {
            return Service.UNKNOWN;
        }
        var named = inputs.optional("/service/lading", service.lading(), 64);
        var lading = named == null ? null : named.toUpperCase(Locale.ROOT);
        if (lading != null && !Lading.isWellFormed(lading)) {
            inputs.refuse("/service/lading", "INVALID_LADING", named, "letters, digits and _, such as LPG");
            lading = null;
        }
        return new Service(lading == null ? null : new Lading(lading), service.exclusive(), service.corrosionFree());
    }

    private @Nullable Permit permit(Inputs inputs) {
        if (permit == null) {
            return null;
        }
        var number = inputs.optional("/permit/number", permit.number(), 40);
        var interval = permit.intervalYears();
        var expires = permit.expires();
        if (interval != null && (interval < 1 || interval > 40)) {
            inputs.refuse("/permit/intervalYears", "OUT_OF_RANGE", interval.toString(), "1 to 40 years");
            interval = null;
        }
        inRange("/permit/expires", expires, inputs);
        return number == null && expires == null && interval == null ? null : new Permit(number, expires, interval);
    }

    private static <T extends TemporalAccessor> @Nullable T inRange(String pointer, @Nullable T given, Inputs inputs) {
        if (given != null && (given.get(ChronoField.YEAR) < 1900 || given.get(ChronoField.YEAR) > 2200)) {
            inputs.refuse(pointer, "OUT_OF_RANGE", given.toString(), "from 1900 to 2200");
        }
        return given;
    }

    /** A day that has begun somewhere on earth: the container's own is not known here. */
    private @Nullable LocalDate outOfServiceSince(LocalDate today, Inputs inputs) {
        if (outOfServiceSince != null && outOfServiceSince.isAfter(today.plusDays(1))) {
            inputs.refuse("/outOfServiceSince", "IN_THE_FUTURE", outOfServiceSince.toString(), "a day that has begun");
            return null;
        }
        return inRange("/outOfServiceSince", outOfServiceSince, inputs);
    }

    private @Nullable Tag tag(Inputs inputs) {
        if (tag == null || tag.isBlank()) {
            return null;
        }
        return switch (Tag.tryParse(tag)) {
            case Parsed<Tag>(var read, var _) -> read;
            case Rejected<Tag>(int index, var found, var expected) -> {
                inputs.refuse("/tag", "INVALID_TAG", tag, expected + "; at character " + (index + 1) + " stands "
                        + found);
                yield null;
            }
        };
    }
}
