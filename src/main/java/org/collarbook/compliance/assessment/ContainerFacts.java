package org.collarbook.compliance.assessment;

import java.math.BigDecimal;
import java.time.LocalDate;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

/** What a caller states of the container itself. */
record ContainerFacts(@Nullable String kind, @Nullable String specification, @Nullable String manufactured,
        @Nullable String waterCapacity, @Nullable BigDecimal servicePressure, @Nullable Boolean coated,
        @Nullable Boolean lined, @Nullable String steel, @Nullable String installation,
        @Nullable Boolean marksLegible, @Nullable Boolean ownerConsent, @Nullable PermitFacts permit,
        @Nullable String use, @Nullable ServiceFacts service, @Nullable String reliefValve,
        @Nullable String extendedPeriod, @Nullable String extinguisher, @Nullable String schemeDue,
        @Nullable Boolean reliefValveFitted, @Nullable Boolean overfillPrevention, @Nullable String labelledFor) {

    static final ContainerFacts UNKNOWN = new ContainerFacts(null, null, null, null, null, null, null, null, null,
            null, null, null, null, null, null, null, null, null, null, null, null);

    record PermitFacts(@Nullable String number, @Nullable String expires, @Nullable BigDecimal intervalYears) {

        Permit read(FactsReader reader) {
            var years = reader.whole("/container/permit/intervalYears", intervalYears, 1, 40);
            return new Permit(reader.text("/container/permit/number", number, 40),
                    reader.day("/container/permit/expires", expires), years);
        }
    }

    record ServiceFacts(@Nullable String lading, @Nullable Boolean exclusive, @Nullable Boolean corrosionFree) {

        Service read(FactsReader reader) {
            return new Service(reader.lading("/container/service/lading", lading), exclusive, corrosionFree);
        }
    }

    FactsBuilder read(FactsReader reader, @Nullable LocalDate asOf) {
        return Facts.builder().kind(word(reader, "kind", kind, ContainerKind.class))
                .specification(reader.specification("/container/specification", specification))
                .manufactured(reader.manufactured("/container/manufactured", manufactured, asOf))
                .waterCapacity(reader.capacity("/container/waterCapacity", waterCapacity))
                .servicePressure(reader.between("/container/servicePressure", servicePressure, 1, 20_000))
                .coated(coated).lined(lined).steel(word(reader, "steel", steel, Steel.class))
                .installation(word(reader, "installation", installation, Installation.class))
                .marksLegible(marksLegible).ownerConsent(ownerConsent)
                .permit(permit == null ? null : permit.read(reader)).use(word(reader, "use", use, Use.class))
                .service(service == null ? Service.UNKNOWN : service.read(reader))
                .reliefValve(word(reader, "reliefValve", reliefValve, ReliefValve.class))
                .extendedPeriod(word(reader, "extendedPeriod", extendedPeriod, ExtendedPeriod.class))
                .extinguisher(word(reader, "extinguisher", extinguisher, Extinguisher.class))
                .schemeDue(reader.month("/container/schemeDue", schemeDue)).fittings(fittings(reader));
    }

    private @Nullable Fittings fittings(FactsReader reader) {
        var label = word(reader, "labelledFor", labelledFor, Fittings.Label.class);
        return reliefValveFitted == null && overfillPrevention == null && label == null
                ? null
                : new Fittings(reliefValveFitted, overfillPrevention, label, null);
    }

    private static <E extends Enum<E>> @Nullable E word(FactsReader reader, String field, @Nullable String given,
            Class<E> words) {
        return reader.word("/container/" + field, given, words);
    }
}
