package org.collarbook.compliance.declarations;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Objects;
import java.util.stream.Stream;

import org.collarbook.platform.Ids;
import org.collarbook.platform.Inputs;
import org.collarbook.registry.Declaration;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What a named person declares for a group of containers; a fact that is absent is not asserted. It fills what is
 * unknown and nothing else: {@code onlyUnknown} may say so, and nothing else.
 */
@Schema(requiredProperties = {"declaredBy", "declaredOn", "statement", "facts", "group"})
record DeclareRequest(@Nullable String declaredBy, @Nullable LocalDate declaredOn, @Nullable String statement,
        @Nullable DeclaredFacts facts, @Nullable GroupRequest group, @Nullable Boolean onlyUnknown) {

    record DeclaredFacts(@Nullable Boolean coated, @Nullable String lading, @Nullable Boolean exclusive,
            @Nullable Boolean corrosionFree, @Nullable Boolean marksLegible, @Nullable Boolean owned,
            @Nullable Boolean ownerConsent, @Nullable String jurisdiction) {

        private boolean isEmpty() {
            return Stream.of(coated, lading, exclusive, corrosionFree, marksLegible, owned, ownerConsent, jurisdiction)
                    .allMatch(Objects::isNull);
        }
    }

    /** Read, and fit to be recorded. */
    record Read(Declaration declaration, Group group) {}

    Read read(Clock clock) {
        var inputs = new Inputs();
        var by = inputs.required("/declaredBy", declaredBy, 200);
        var on = Declaration.day("/declaredOn", declaredOn, clock, inputs);
        var said = inputs.required("/statement", statement, 2000);
        if (Boolean.FALSE.equals(onlyUnknown)) {
            inputs.refuse("/onlyUnknown", "OUT_OF_RANGE", "false", "true: what is known is not declared over");
        }
        var told = facts(inputs);
        var lading = lading(told, inputs);
        var law = jurisdiction(told, inputs);
        var of = group == null ? null : group.read(inputs);
        inputs.present("/group", group, "the containers it is about");
        inputs.done();
        return new Read(new Declaration(Ids.next(), Objects.requireNonNull(by), Objects.requireNonNull(on),
                Objects.requireNonNull(said), law, told.coated, lading, told.exclusive, told.corrosionFree,
                told.marksLegible, told.owned, told.ownerConsent, null, null, null), Objects.requireNonNull(of));
    }

    private DeclaredFacts facts(Inputs inputs) {
        var told = facts == null ? new DeclaredFacts(null, null, null, null, null, null, null, null) : facts;
        if (told.isEmpty()) {
            inputs.present("/facts", null, "one at least of coated, lading, exclusive, corrosionFree, marksLegible,"
                    + " owned, ownerConsent, jurisdiction");
        }
        return told;
    }

    private static @Nullable Lading lading(DeclaredFacts told, Inputs inputs) {
        var name = told.lading;
        if (name == null || Lading.isWellFormed(name)) {
            return name == null ? null : new Lading(name);
        }
        inputs.refuse("/facts/lading", "INVALID_LADING", name, "a name such as LPG");
        return null;
    }

    private static @Nullable Jurisdiction jurisdiction(DeclaredFacts told, Inputs inputs) {
        var code = told.jurisdiction;
        if (code == null || Jurisdiction.isWellFormed(code)) {
            return code == null ? null : new Jurisdiction(code);
        }
        inputs.refuse("/facts/jurisdiction", "INVALID_JURISDICTION", code, "a code such as US or CA-BC");
        return null;
    }
}
