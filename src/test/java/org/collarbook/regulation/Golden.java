package org.collarbook.regulation;

import java.util.Map;
import java.util.stream.Collectors;

/** What the golden tables say of an assessment. */
final class Golden {

    private Golden() {}

    static Map<String, String> permissions(String id, Assessment assessment) {
        String reasons = assessment.mayFill().reasons().stream().map(reason -> reason.code().name()).distinct()
                .collect(Collectors.joining(" "));
        return Map.of("id", id, "status", assessment.status().name(), "mayFill", yes(assessment.mayFill()), "mayCarry",
                yes(assessment.mayCarry()), "mayCarryEmpty", yes(assessment.mayCarryEmpty()), "mayUse",
                yes(assessment.mayUse()), "whyNotFill", reasons);
    }

    private static String yes(Permission permission) {
        return permission.allowed() ? "yes" : "no";
    }
}
