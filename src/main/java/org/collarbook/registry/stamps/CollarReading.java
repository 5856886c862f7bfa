package org.collarbook.registry.stamps;

import java.util.List;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Collar;
import org.jspecify.annotations.Nullable;

/** Every line in its order, and what they make together. */
public record CollarReading(List<StampLine> lines, ReadMarks marks) {

    private static final int MOST_LINES = 100;
    private static final int LONGEST_LINE = 200;

    /** What is known beforehand serves every line, and what a line says serves those after it. */
    public static CollarReading of(List<String> lines, Collar known) {
        return new StampReader(known).read(lines);
    }

    /** The {@code /lines} of a request as {@link #of} takes them, once {@code inputs} is done without a refusal. */
    public static List<String> checked(@Nullable List<@Nullable String> lines, Inputs inputs) {
        var given = inputs.present("/lines", lines, "1 to " + MOST_LINES + " lines of text");
        if (given == null) {
            return List.of();
        }
        if (given.isEmpty() || given.size() > MOST_LINES) {
            inputs.refuse("/lines", "OUT_OF_RANGE", given.size() + " lines", "1 to " + MOST_LINES + " lines of text");
            return List.of();
        }
        for (int i = 0; i < given.size(); i++) {
            var line = inputs.present("/lines/" + i, given.get(i), "a text");
            if (line != null && line.length() > LONGEST_LINE) {
                inputs.refuse("/lines/" + i, "INVALID_TEXT", line, "at most " + LONGEST_LINE + " characters");
            }
        }
        return inputs.areRefused() ? List.of() : given.stream().map(String::valueOf).toList();
    }
}
