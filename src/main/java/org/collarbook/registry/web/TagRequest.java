package org.collarbook.registry.web;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** The tag that a container gets, and why. */
@Schema(requiredProperties = {"tag", "reason"})
record TagRequest(@Nullable String tag, @Nullable String reason) {

    record Read(Tag tag, String reason) {}

    Read read() {
        var inputs = new Inputs();
        var why = inputs.required("/reason", reason, 1000);
        var read = tag(inputs, "/tag", tag);
        inputs.done();
        if (read == null || why == null) {
            throw new IllegalStateException("a tag and a reason were neither read nor refused");
        }
        return new Read(read, why);
    }

    static @Nullable Tag tag(Inputs inputs, String pointer, @Nullable String text) {
        if (text == null || text.isBlank()) {
            inputs.refuse(pointer, "MISSING", text, "the tag as scanned");
            return null;
        }
        return switch (Tag.tryParse(text)) {
            case Parsed<Tag>(var read, var _) -> read;
            case Rejected<Tag>(int index, var found, var expected) -> {
                inputs.refuse(pointer, "INVALID_TAG", text, expected + "; at character " + (index + 1) + " stands "
                        + found);
                yield null;
            }
        };
    }
}
