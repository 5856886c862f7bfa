package org.collarbook.compliance;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** What is missing of a container whose due month cannot be told, from the reasons that are stored. */
public final class MissingFacts {

    private static final Map<String, ReasonCode> CODES = Arrays.stream(ReasonCode.values())
            .collect(Collectors.toUnmodifiableMap(Enum::name, Function.identity()));
    /** Nothing is missing, and yet nothing can be told. */
    private static final Set<ReasonCode> NOT_TOLD = EnumSet.of(ReasonCode.METHOD_NOT_ACCEPTED,
            ReasonCode.CONTRADICTORY_FACTS, ReasonCode.NO_RULE_HELD);

    private MissingFacts() {}

    /** The sentences; a code that this version does not know is of a row that is being assessed anew. */
    public static List<String> of(List<String> reasons) {
        var missing = reasons.stream().map(CODES::get).filter(MissingFacts::isMissing).map(ReasonCode::text).toList();
        return missing.isEmpty() ? List.of("What is due cannot be told: ask the depot.") : missing;
    }

    /** The codes themselves. */
    public static List<String> codes() {
        return CODES.values().stream().filter(MissingFacts::isMissing).map(Enum::name).sorted().toList();
    }

    private static boolean isMissing(@Nullable ReasonCode code) {
        return code != null && (code.name().startsWith("MISSING_") || NOT_TOLD.contains(code));
    }
}
