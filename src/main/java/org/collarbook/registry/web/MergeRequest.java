package org.collarbook.registry.web;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.IdentityActs.Said;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * The record that is absorbed, and by name what it says otherwise and is given up; {@code fillWillBeAllowed}: the caller
 * has seen why a fill was refused.
 */
@Schema(requiredProperties = {"absorbed", "reason"})
record MergeRequest(@Nullable UUID absorbed, @Nullable List<String> setAside, @Nullable Boolean fillWillBeAllowed,
        @Nullable String reason) {

    private static final int MOST_FIELDS = 50;

    record Read(UUID absorbed, List<String> setAside, Said said) {}

    Read read() {
        var inputs = new Inputs();
        var other = inputs.present("/absorbed", absorbed, "the id of the record that is to be absorbed");
        var why = inputs.required("/reason", reason, 1000);
        var given = setAside == null ? List.<String>of() : setAside;
        if (given.size() > MOST_FIELDS
                || given.stream().anyMatch(field -> field == null || field.length() > MOST_FIELDS)) {
            inputs.refuse("/setAside", "TOO_MANY", given.size() + " names", "names of fields, at most " + MOST_FIELDS);
        }
        inputs.done();
        if (other == null || why == null) {
            throw new IllegalStateException("a record and a reason were neither read nor refused");
        }
        return new Read(other, given, new Said(why, Boolean.TRUE.equals(fillWillBeAllowed)));
    }
}
