package org.collarbook.intake.scans;

import java.util.List;
import java.util.Map;

import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;

/** Refusals of single lines: the same codes as at the endpoint of their kind, with pointers into the batch. */
final class Refusals {

    /** What the endpoints call the moment of a line. */
    private static final Map<String, String> MOMENTS = Map.of("/filledAt", "/occurredAt", "/emptiedAt", "/occurredAt");

    private Refusals() {}

    static LineAnswer of(ReadLine line, List<FieldError> errors) {
        return LineAnswer.refused(line.id(), errors.getFirst().code(), null,
                errors.stream().map(error -> inBatch(line, error)).toList());
    }

    static LineAnswer of(ReadLine line, FieldError error) {
        return of(line, List.of(error));
    }

    static LineAnswer of(ReadLine line, Problem problem) {
        return problem.errors().isEmpty()
                ? LineAnswer.refused(line.id(), problem.code(), problem.detail(),
                        List.of(new FieldError(pointer(line, ""), problem.code(), null, "see detail")))
                : of(line, problem.errors());
    }

    private static FieldError inBatch(ReadLine line, FieldError error) {
        return new FieldError(pointer(line, MOMENTS.getOrDefault(error.pointer(), error.pointer())), error.code(),
                error.found(), error.accepted());
    }

    private static String pointer(ReadLine line, String pointer) {
        return "/lines/" + line.position() + pointer;
    }
}
