package org.collarbook.compliance.declarations;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.registry.Declaration;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A declaration for a group as it is recorded; {@code told}: its conditions, as JSON. */
record GroupDeclaration(Declaration declaration, String told, State state, Instant recordedAt, UUID recordedBy,
        @Nullable Withdrawal withdrawal) {

    /** How far it is carried out. */
    enum State {
        APPLYING,
        APPLIED,
        WITHDRAWING,
        WITHDRAWN
    }

    @Schema(name = "DeclarationWithdrawal")
    record Withdrawal(String reason, Instant recordedAt, UUID recordedBy) {}

    /** As it is told with every field that it changes; the whole statement is in the declaration. */
    String reason() {
        return "Declaration " + id() + " by " + declaration.declaredBy() + " of " + on() + ": "
                + declaration.statement().substring(0, declaration.statement().offsetByCodePoints(0,
                        Math.min(500, declaration.statement().codePointCount(0, declaration.statement().length()))));
    }

    String reason(Withdrawal why) {
        var whole = "Declaration " + id() + " withdrawn: " + why.reason;
        return whole.length() <= 1000 ? whole : whole.substring(0, whole.offsetByCodePoints(0, 900));
    }

    UUID id() {
        return declaration.id();
    }

    private LocalDate on() {
        return declaration.declaredOn();
    }
}
