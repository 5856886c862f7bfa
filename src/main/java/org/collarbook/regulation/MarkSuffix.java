package org.collarbook.regulation;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What stands after the date of a mark: the letters of 49 CFR 180.213(f) or of 180.415, star and plus. Each alternative
 * is a list of methods done; an empty list is a method not known.
 */
record MarkSuffix(List<List<Method>> alternatives, boolean star, boolean plus, boolean isEmpty,
        @Nullable String warning) {

    static final String EXPECTED = "no suffix, or one of S E FS AE UE VE, or of V I K L T P (several with commas),"
            + " and * or +";

    /** 49 CFR 180.213(f): the star follows the date alone, and 180.209(b) gives it for a volumetric expansion test. */
    private static final String STRAY_STAR = "a star belongs to a volumetric expansion test, which bears no letter;"
            + " letter or star was misread";

    private static final Pattern SHAPE = Pattern
            .compile("(?:[-/]? ?([A-Z?](?: ?[A-Z])?))? ?([*★]?) ?(\\+?) ?([*★]?)");
    private static final Pattern TANK_TESTS = Pattern.compile("[-/]? ?([VIKLTP](?: ?[,;&/]? ?[VIKLTP]){0,5})");

    /** {@code tail} in capitals and without outer space; null where no rule explains it. */
    static @Nullable MarkSuffix read(String tail, @Nullable Specification specification) {
        Matcher tests = TANK_TESTS.matcher(tail);
        if (tests.matches()) {
            return tankTests(tests.group(1));
        }
        Matcher shape = SHAPE.matcher(tail);
        if (!shape.matches()) {
            return null;
        }
        boolean star = !shape.group(2).isEmpty() || !shape.group(4).isEmpty();
        boolean plus = !shape.group(3).isEmpty();
        String letters = shape.group(1) == null ? "" : shape.group(1);
        return method(letters, specification, star, plus);
    }

    /** "10-99 P, V, L" is one mark of three tests, 49 CFR 180.415. */
    private static @Nullable MarkSuffix tankTests(String letters) {
        List<Method> done = new ArrayList<>();
        for (char letter : letters.toCharArray()) {
            if (Character.isLetter(letter)) {
                Method test = Method.valueOf(String.valueOf(letter));
                if (done.contains(test)) {
                    return null;
                }
                done.add(test);
            }
        }
        return new MarkSuffix(List.of(List.copyOf(done)), false, false, false, null);
    }

    private static @Nullable MarkSuffix method(String letters, @Nullable Specification specification, boolean star,
            boolean plus) {
        List<List<Method>> alternatives = switch (letters) {
            case "" -> List.of(List.of(Method.VOLUMETRIC_EXPANSION));
            case "S" -> proofOrShell(specification);
            case "E" -> List.of(List.of(Method.EXTERNAL_VISUAL));
            case "FS" -> List.of(List.of(Method.SHELL_AND_FILLER));
            case "AE" -> List.of(List.of(Method.ACOUSTIC_EMISSION));
            case "UE" -> List.of(List.of(Method.ULTRASONIC));
            case "VE" -> List.of(List.of(Method.EDDY_CURRENT_VISUAL));
            case "V", "I", "K", "L", "T", "P" -> List.of(List.of(Method.valueOf(letters)));
            case "R", "?" -> List.of(List.of());
            default -> List.of();
        };
        return alternatives.isEmpty()
                ? null
                : new MarkSuffix(alternatives, star, plus, letters.isEmpty() && !star && !plus, star
                        && !letters.isEmpty() ? STRAY_STAR : doubt(letters, specification));
    }

    private static List<List<Method>> proofOrShell(@Nullable Specification specification) {
        if (specification == null) {
            return List.of(List.of(Method.PROOF_PRESSURE), List.of(Method.SHELL_ONLY));
        }
        return List.of(List.of(specification.isSeries8() ? Method.SHELL_ONLY : Method.PROOF_PRESSURE));
    }

    private static @Nullable String doubt(String letters, @Nullable Specification specification) {
        return switch (letters) {
            // PHMSA letter 13-0032 (2013-05-29) met an S that stood for a siphon tube.
            case "S" -> specification == null || specification.isSeries8()
                    ? null
                    : "an S beside the date is read as a proof pressure test; it may also stand for a siphon tube";
            case "R", "?" -> "the suffix names no method that is known";
            default -> null;
        };
    }
}
