package org.collarbook.compliance.swaps;

import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

/** A container by its id, or by its tag, or by its serial with specification and maker as far as read. */
public record NamedContainer(@Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
        @Nullable String specification, @Nullable String maker) {

    /** What was read off it, where its id is not told. {@code pointer} is what the inputs' names begin with. */
    public @Nullable WhichContainer marks(String pointer, Inputs inputs) {
        if (containerId == null) {
            return WhichContainer.read(pointer, tag, serial, specification, maker, inputs);
        }
        if (Stream.of(tag, serial).anyMatch(text -> text != null && !text.isBlank())) {
            inputs.refuse(pointer + "containerId", "TOO_MANY", containerId.toString(),
                    "one of containerId, tag and serial");
        }
        return null;
    }
}
