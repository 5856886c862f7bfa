package org.collarbook.custody.web;

import java.time.Instant;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** {@code how} it was emptied, in the words of whoever saw it: used up, drawn off, burnt off. */
@Schema(requiredProperties = "emptiedAt")
record EmptyingRequest(@Nullable Instant emptiedAt, @Nullable String how) {

    record Content(Instant emptiedAt, @Nullable String how) {}

    Content toContent(Instant now) {
        var inputs = new Inputs();
        var at = Moments.past("/emptiedAt", emptiedAt, now, inputs);
        var words = inputs.optional("/how", how, 200);
        inputs.done();
        if (at == null) {
            throw new IllegalStateException("an emptying was neither read nor refused");
        }
        return new Content(at, words);
    }
}
