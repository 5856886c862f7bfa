package org.collarbook.holds.web;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = "reason")
record RecallEndRequest(@Nullable String reason) {

    String read() {
        var inputs = new Inputs();
        var why = inputs.required("/reason", reason, 1000);
        inputs.done();
        if (why == null) {
            throw new IllegalStateException("a reason was neither read nor refused");
        }
        return why;
    }
}
