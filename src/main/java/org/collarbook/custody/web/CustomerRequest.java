package org.collarbook.custody.web;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = {"code", "name"})
record CustomerRequest(@Nullable String code, @Nullable String name) {

    record Content(String code, String name) {}

    Content toContent() {
        var inputs = new Inputs();
        var readCode = inputs.required("/code", code, 40);
        var readName = inputs.required("/name", name, 200);
        inputs.done();
        return new Content(String.valueOf(readCode), String.valueOf(readName));
    }
}
