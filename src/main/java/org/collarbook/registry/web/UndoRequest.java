package org.collarbook.registry.web;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.IdentityActs.Said;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** Why an act is undone; {@code fillWillBeAllowed}: the caller has seen why a fill was refused. */
@Schema(requiredProperties = "reason")
record UndoRequest(@Nullable String reason, @Nullable Boolean fillWillBeAllowed) {

    Said read() {
        var inputs = new Inputs();
        var why = inputs.required("/reason", reason, 1000);
        inputs.done();
        return new Said(String.valueOf(why), Boolean.TRUE.equals(fillWillBeAllowed));
    }
}
