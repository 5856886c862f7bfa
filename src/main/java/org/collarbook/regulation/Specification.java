package org.collarbook.regulation;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A specification as stamped. {@code family} is what rules speak of ("4BA", "4B240ET", "MC-331", "ASME", "UN", "SP");
 * {@code detail} is the permit number ("SP12345"), the equivalency certificate ("SU5931"), the UN design standard ("ISO
 * 9809-1") or "P15Y", the longer period that ADR P200(12) grants; {@code pressure} is the
 * stamped service pressure in the unit of its authority; {@code alsoMarked} is the second of a dual mark.
 */
public record Specification(Authority authority, String family, @Nullable String detail, @Nullable Integer pressure,
        @Nullable Specification alsoMarked) {

    public static final Specification ASME = new Specification(Authority.ASME, "ASME", null, null, null);

    /** Families whose name tells the pressure. */
    private static final Set<String> WITH_PRESSURE = Set.of("4B240ET", "3A480X", "4AA480");

    public Specification {
        // the plans of the rule book are found by it, millions of times a second
        family = family.intern();
    }

    /** A specification of a family, with nothing else stamped. */
    public static Specification like(Authority authority, String family) {
        return new Specification(authority, family, null, null, null);
    }

    static Specification of(Authority authority, String family, @Nullable Integer pressure) {
        return new Specification(authority, family, null, pressure, null);
    }

    public static ParseResult<Specification> tryParse(String text) {
        return new SpecificationParser(text).read();
    }

    public static Specification parse(String text) {
        return tryParse(text).orElseThrow("specification", text);
    }

    /** In psig; null when none is stamped, or when it is stamped in another unit, as under TC in bar. */
    public @Nullable Integer servicePressurePsig() {
        return switch (authority) {
            case DOT, ICC, CRC, BTC, CTC, SPECIAL_PERMIT -> pressure;
            case TC, UN, ASME, ADR -> null;
        };
    }

    /** The acetylene cylinders, on which an S mark means the shell only, 49 CFR 180.213(f). */
    public boolean isSeries8() {
        return family.equals("8") || family.equals("8AL");
    }

    Specification with(Specification second) {
        boolean keep = second.authority == Authority.TC || authority != Authority.TC;
        Specification first = keep ? this : second;
        Specification other = keep ? second : this;
        return new Specification(first.authority, first.family, first.detail, first.pressure, other);
    }

    private String single() {
        return switch (authority) {
            case ASME -> "ASME";
            case UN -> detail == null ? "UN" : "UN " + detail;
            case SPECIAL_PERMIT -> authority.prefix() + "-" + detail + (pressure == null ? "" : "-" + pressure);
            case ADR -> (family.startsWith("EN") ? family : "ADR-" + family) + (detail == null ? "" : " " + detail);
            case DOT, ICC, CRC, BTC, CTC, TC -> namesItself() ? family : stamped();
        };
    }

    /** Stamped without the authority: MC-331, IM-101. */
    boolean namesItself() {
        return family.startsWith("MC-") || family.startsWith("IM-");
    }

    private String stamped() {
        if (detail != null) {
            return authority.prefix() + "-" + detail;
        }
        String separator = family.equals("3") ? "-" : "";
        boolean told = pressure == null || WITH_PRESSURE.contains(family);
        return authority.prefix() + "-" + family + (told ? "" : separator + pressure);
    }

    @Override
    public String toString() {
        return alsoMarked == null ? single() : single() + "/" + alsoMarked.single();
    }
}
