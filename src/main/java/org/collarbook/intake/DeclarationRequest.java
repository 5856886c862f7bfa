package org.collarbook.intake;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Objects;

import org.collarbook.platform.Ids;
import org.collarbook.platform.Inputs;
import org.collarbook.registry.Declaration;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/**
 * What a named person declares for all containers of a ledger; each fact that is not asserted stays unknown. The zone is
 * that of the sites which the ledger opens.
 */
record DeclarationRequest(@Nullable String declaredBy, @Nullable LocalDate declaredOn, @Nullable String statement,
        @Nullable String jurisdiction, @Nullable String zone, @Nullable Boolean coated,
        @Nullable Boolean marksLegible, @Nullable Boolean owned, @Nullable Boolean ownerConsent,
        @Nullable Boolean rinSeen, @Nullable String bareMonthMethod, @Nullable Boolean blankMeansNone,
        @Nullable DeclaredService service) {

    record DeclaredService(@Nullable String lading, @Nullable Boolean exclusive, @Nullable Boolean corrosionFree) {}

    /** A declaration that can be kept, and the zone that goes with it. */
    record Checked(Declaration declaration, @Nullable ZoneId zone) {}

    private static final String AT = "/declaration/";

    Checked check(Clock clock) {
        var inputs = new Inputs();
        var by = inputs.required(AT + "declaredBy", declaredBy, 200);
        var on = Declaration.day(AT + "declaredOn", declaredOn, clock, inputs);
        var said = inputs.required(AT + "statement", statement, 2000);
        var method = inputs.word(AT + "bareMonthMethod", bareMonthMethod, Method.class);
        var law = jurisdiction(inputs);
        var at = zone(inputs);
        var lading = lading(inputs);
        inputs.done();
        return new Checked(new Declaration(Ids.next(), Objects.requireNonNull(by), Objects.requireNonNull(on),
                Objects.requireNonNull(said), law, coated, lading, service == null ? null : service.exclusive(),
                service == null ? null : service.corrosionFree(), marksLegible, owned, ownerConsent, rinSeen, method,
                blankMeansNone), at);
    }

    private @Nullable Jurisdiction jurisdiction(Inputs inputs) {
        if (jurisdiction == null) {
            return null;
        }
        if (Jurisdiction.isWellFormed(jurisdiction)) {
            return new Jurisdiction(jurisdiction);
        }
        inputs.refuse(AT + "jurisdiction", "INVALID_JURISDICTION", jurisdiction, "a code such as US or CA-BC");
        return null;
    }

    private @Nullable ZoneId zone(Inputs inputs) {
        try {
            return zone == null ? null : ZoneId.of(zone);
        } catch (DateTimeException unknown) {
            inputs.refuse(AT + "zone", "UNKNOWN_ZONE", zone, "a time zone such as America/Chicago");
            return null;
        }
    }

    private @Nullable Lading lading(Inputs inputs) {
        var name = service == null ? null : service.lading();
        if (name == null || Lading.isWellFormed(name)) {
            return name == null ? null : new Lading(name);
        }
        inputs.refuse(AT + "service/lading", "INVALID_LADING", name, "a name such as LPG");
        return null;
    }
}
