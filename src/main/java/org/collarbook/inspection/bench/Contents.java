package org.collarbook.inspection.bench;

import static org.collarbook.inspection.bench.Contents.Need.NONE;
import static org.collarbook.inspection.bench.Contents.Need.OPTIONAL;
import static org.collarbook.inspection.bench.Contents.Need.REQUIRED;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;

import org.collarbook.regulation.Citation;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/**
 * What a record has, by its method: what must be told, what may, and what that method does not measure. {@code source} is
 * null where no rule that was read says it: common practice, no source.
 */
public record Contents(Need visual, Need pressures, Need expansion, Need coatingAndOwner, Set<ContainerKind> kinds,
        @Nullable Citation source) {

    public enum Need {
        REQUIRED,
        OPTIONAL,
        NONE
    }

    private static final Set<ContainerKind> ANY = EnumSet.allOf(ContainerKind.class);
    private static final Set<ContainerKind> CYLINDERS = EnumSet.of(ContainerKind.CYLINDER);
    private static final Set<ContainerKind> TANKS = EnumSet.complementOf(EnumSet.of(ContainerKind.CYLINDER));
    private static final Set<Method> RECORDED = EnumSet.range(Method.VOLUMETRIC_EXPANSION, Method.PROTECTION_TESTED);

    /** Extinguishers beside a tank have records of their own. */
    public static boolean areHeldFor(Method method) {
        return RECORDED.contains(method);
    }

    public static String methods() {
        return "one of " + RECORDED.stream().map(Method::name).collect(Collectors.joining(", "));
    }

    public static Contents of(Method method) {
        return switch (method) {
            case VOLUMETRIC_EXPANSION -> new Contents(REQUIRED, REQUIRED, REQUIRED, OPTIONAL, CYLINDERS,
                    Sources.RECORD);
            case PROOF_PRESSURE -> new Contents(REQUIRED, REQUIRED, NONE, OPTIONAL, ANY, Sources.PROOF_TEST);
            case EXTERNAL_VISUAL -> new Contents(REQUIRED, NONE, NONE, REQUIRED, CYLINDERS, Sources.VISUAL_RECORD);
            case ULTRASONIC, ACOUSTIC_EMISSION, EDDY_CURRENT_VISUAL -> new Contents(REQUIRED, OPTIONAL, NONE, OPTIONAL,
                    ANY, Sources.RECORD);
            case SHELL_ONLY, SHELL_AND_FILLER -> new Contents(REQUIRED, NONE, NONE, OPTIONAL, CYLINDERS,
                    Sources.RECORD);
            case V, I, L, T -> new Contents(REQUIRED, NONE, NONE, OPTIONAL, TANKS, Sources.TANK_RECORD);
            case K, P -> new Contents(OPTIONAL, REQUIRED, NONE, OPTIONAL, TANKS, Sources.TANK_RECORD);
            case PERIODIC, INTERMEDIATE, EXAMINATION, THOROUGH_EXAMINATION -> new Contents(REQUIRED, OPTIONAL, NONE,
                    OPTIONAL, ANY, null);
            case VALVE_REPLACED, VALVE_SERVICED, VALVE_INSPECTED -> new Contents(OPTIONAL, NONE, NONE, NONE, ANY,
                    null);
            case HOSE_TESTED, UNLOADING_SYSTEM_INSPECTED, PROTECTION_INSTALLED, PROTECTION_TESTED -> new Contents(
                    OPTIONAL, NONE, NONE, NONE, TANKS, null);
            case EXTINGUISHER_INSPECTED, EXTINGUISHER_MAINTAINED, EXTINGUISHER_EMPTIED,
                    EXTINGUISHER_PRESSURE_TESTED ->
                throw new IllegalArgumentException(method + " is not recorded here");
        };
    }

    /** What was done to a part of a container rather than to the container. */
    public static boolean isOfPart(Method method) {
        return method.compareTo(Method.VALVE_REPLACED) >= 0;
    }

    /** 49 CFR 180.205(g) speaks of the pressure tests of cylinders. */
    public static boolean mayBeRepeated(Method method) {
        return method == Method.VOLUMETRIC_EXPANSION || method == Method.PROOF_PRESSURE;
    }

    public String kindsInWords() {
        return Arrays.stream(ContainerKind.values()).filter(kinds::contains).map(Enum::name)
                .collect(Collectors.joining(", "));
    }
}
