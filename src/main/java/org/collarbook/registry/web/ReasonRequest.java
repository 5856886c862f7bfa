package org.collarbook.registry.web;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** Why something is done that needs no more than that. */
@Schema(requiredProperties = "reason")
record ReasonRequest(@Nullable String reason) {

    String read() {
        var inputs = new Inputs();
        var why = inputs.required("/reason", reason, 1000);
        inputs.done();
        return String.valueOf(why);
    }
}
