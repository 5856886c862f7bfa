package org.collarbook.platform;

import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

import tools.jackson.core.JacksonException;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.databind.exc.InvalidFormatException;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;

/** Says where a JSON body could not be read, without echoing the parser's internals. */
public final class UnreadableJson {

    private UnreadableJson() {}

    /** {@code cause} is what the reader threw; null is not known. */
    public static FieldError explain(@Nullable Throwable cause) {
        return switch (cause) {
            case UnrecognizedPropertyException unknown -> new FieldError(pointer(unknown), "UNKNOWN_FIELD",
                    unknown.getPropertyName(), "one of " + unknown.getKnownPropertyIds().stream().map(String::valueOf)
                            .sorted().collect(Collectors.joining(", ")));
            case InvalidFormatException wrong -> new FieldError(pointer(wrong), "WRONG_TYPE",
                    String.valueOf(wrong.getValue()), Accepted.of(wrong.getTargetType()));
            case MismatchedInputException wrong -> new FieldError(pointer(wrong), "WRONG_TYPE", null,
                    Accepted.of(wrong.getTargetType()));
            case StreamReadException broken -> new FieldError("", "NOT_JSON", at(broken), "well-formed JSON in UTF-8");
            case null, default -> new FieldError("", "NOT_JSON", null, "a JSON body in UTF-8");
        };
    }

    private static String pointer(JacksonException exception) {
        return exception.getPath().stream().map(step -> step.getPropertyName() == null
                ? String.valueOf(step.getIndex())
                : step.getPropertyName().replace("~", "~0").replace("/", "~1"))
                .collect(Collectors.joining("/", "/", ""));
    }

    private static String at(StreamReadException broken) {
        return "line " + broken.getLocation().getLineNr() + ", column " + broken.getLocation().getColumnNr();
    }
}
