package org.collarbook.regulation;

import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;

/** Specifications as they may be stamped, made of the families that are known. */
public final class RandomSpecification {

    private static final List<Authority> US = List.of(Authority.DOT, Authority.ICC, Authority.CRC, Authority.BTC,
            Authority.CTC);
    private static final List<String> PRESSED = List.of("3HT", "3AAX", "3AA", "3AX", "3AL", "3A", "3BN", "3B", "3E",
            "3T",
            "4BA", "4BW", "4B", "4DA", "4DS", "4D", "4E", "4L");
    private static final List<String> UNPRESSED = List.of("8", "8AL", "39", "2P", "2Q", "51", "56", "57", "60", "406",
            "407", "412", "3");
    private static final List<String> ALONE = List.of("MC-306", "MC-330", "MC-331", "MC-338", "IM-101", "IM-102");

    private RandomSpecification() {}

    public static Specification of(Random random) {
        Specification one = single(random);
        Specification canadian = canadian(random);
        return random.nextInt(4) > 0 || one.authority() == Authority.TC ? one : one.with(canadian);
    }

    private static Specification single(Random random) {
        return switch (random.nextInt(7)) {
            case 0 -> new Specification(Authority.ADR, pick(random, List.of("PI", "EN 1442", "EN 14427", "EN 13110",
                    "EN " + (100 + random.nextInt(99_900)))), random.nextBoolean() ? "P15Y" : null, null, null);
            case 1 -> canadian(random);
            case 2 -> new Specification(Authority.UN, "UN", pick(random, List.of("ISO 9809-1", "ISO 4706", "T50")),
                    null, null);
            case 3 -> new Specification(Authority.SPECIAL_PERMIT, "SP", (random.nextBoolean() ? "SP" : "E")
                    + (100 + random.nextInt(99_900)), random.nextBoolean() ? null : 10 + random.nextInt(9_990), null);
            case 4 -> Specification.of(pick(random, US), pick(random, UNPRESSED), null);
            case 5 -> pick(random, List.of(Specification.ASME, Specification.of(Authority.DOT, pick(random, ALONE),
                    null), new Specification(Authority.ADR, "DRUM", null, null, null)));
            default -> pressed(random);
        };
    }

    private static Specification pressed(Random random) {
        @Nullable
        Integer pressure = random.nextInt(4) == 0 ? null : 225 + random.nextInt(276);
        return Specification.of(pick(random, US), pick(random, PRESSED), pressure);
    }

    private static Specification canadian(Random random) {
        return switch (random.nextInt(3)) {
            case 0 -> Specification.of(Authority.TC, pick(random, List.of("331", "338", "406", "407", "412", "51",
                    "3FCM")), null);
            case 1 -> new Specification(Authority.TC, "SU", "SU" + (100 + random.nextInt(99_900)), null, null);
            default -> Specification.of(Authority.TC, pick(random, List.of("4BAM", "4BWM", "4EM", "3AAM", "3ALM",
                    "4LM")), 1 + random.nextInt(400));
        };
    }

    private static <T> T pick(Random random, List<T> values) {
        return values.get(random.nextInt(values.size()));
    }
}
