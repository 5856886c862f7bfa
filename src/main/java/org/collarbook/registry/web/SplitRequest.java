package org.collarbook.registry.web;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.ProblemException;
import org.collarbook.platform.Problem;
import org.collarbook.platform.FieldError;
import org.collarbook.registry.IdentityActs.Said;
import org.collarbook.registry.IdentityActs.Second;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * The second container as its collar reads, and the facts by id that are its own. Both are held with their identity
 * disputed unless {@code disputed} is false.
 */
@Schema(requiredProperties = {"container", "reason"})
record SplitRequest(@Nullable ContainerRequest container, @Nullable List<UUID> facts, @Nullable Boolean disputed,
        @Nullable Boolean fillWillBeAllowed, @Nullable String reason) {

    private static final int MOST_FACTS = 1000;

    record Read(Second second, Said said) {}

    Read read(LocalDate today) {
        var inputs = new Inputs();
        var why = inputs.required("/reason", reason, 1000);
        inputs.present("/container", container, "the second container as it would be registered");
        var own = facts(inputs);
        inputs.done();
        if (container == null || why == null) {
            throw new IllegalStateException("a container and a reason were neither read nor refused");
        }
        try {
            return new Read(new Second(container.toRegistration(today), own, !Boolean.FALSE.equals(disputed)),
                    new Said(why, Boolean.TRUE.equals(fillWillBeAllowed)));
        } catch (ProblemException refused) {
            throw Problem.invalid(refused.problem().errors().stream().map(error -> new FieldError("/container"
                    + error.pointer(), error.code(), error.found(), error.accepted())).toList()).asException();
        }
    }

    private Set<UUID> facts(Inputs inputs) {
        var given = facts == null ? List.<UUID>of() : facts;
        if (given.size() > MOST_FACTS || given.stream().anyMatch(Objects::isNull)) {
            inputs.refuse("/facts", "TOO_MANY", given.size() + " ids", "ids, at most " + MOST_FACTS);
            return Set.of();
        }
        return new HashSet<>(given);
    }
}
