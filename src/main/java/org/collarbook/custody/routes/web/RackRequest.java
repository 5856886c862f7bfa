package org.collarbook.custody.routes.web;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.Size;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = "places")
record RackRequest(@Nullable List<@Nullable RackPlaces> places) {

    private static final int MOST_SIZES = 100;
    private static final int MOST_PLACES = 10_000;

    record RackPlaces(@Nullable String size, @Nullable Integer places) {}

    Map<Size, Integer> read() {
        var inputs = new Inputs();
        var given = inputs.present("/places", places, "a list of {size, places}; [] when nothing is known");
        var read = new LinkedHashMap<Size, Integer>();
        if (given != null && given.size() > MOST_SIZES) {
            inputs.refuse("/places", "TOO_MANY", given.size() + " sizes", "at most " + MOST_SIZES);
        } else if (given != null) {
            for (int i = 0; i < given.size(); i++) {
                read("/places/" + i, given.get(i), read, inputs);
            }
        }
        inputs.done();
        return read;
    }

    private static void read(String pointer, @Nullable RackPlaces given, Map<Size, Integer> read, Inputs inputs) {
        if (given == null) {
            inputs.refuse(pointer, "MISSING", null, "{size, places}");
            return;
        }
        var word = inputs.required(pointer + "/size", given.size, 60);
        var size = word == null ? null : Size.parse(word).orElse(null);
        if (word != null && size == null) {
            inputs.refuse(pointer + "/size", "UNKNOWN_SIZE", word, Size.ACCEPTED);
        }
        var number = inputs.present(pointer + "/places", given.places, "0 when none fits");
        if (number != null && (number < 0 || number > MOST_PLACES)) {
            inputs.refuse(pointer + "/places", "OUT_OF_RANGE", number.toString(), "0 to " + MOST_PLACES);
        } else if (number != null && size != null && read.put(size, number) != null) {
            inputs.refuse(pointer + "/size", "TOLD_TWICE", word, "each size once");
        }
    }
}
