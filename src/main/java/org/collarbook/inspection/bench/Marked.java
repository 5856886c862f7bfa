package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.Set;

import org.collarbook.registry.Marks;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/**
 * What the judgement of a record asks of the container's marks. {@code dotFamily} is null where no DOT specification
 * governs it (an older authority's mark counts as one, 49 CFR 180.205(c)).
 */
public record Marked(ContainerKind kind, Specification specification, @Nullable String dotFamily,
        @Nullable YearMonth manufactured, @Nullable Integer servicePsig, @Nullable BigDecimal tareLb) {

    private static final Set<Authority> DOT = EnumSet.of(Authority.DOT, Authority.ICC, Authority.CRC, Authority.BTC,
            Authority.CTC);

    public static Marked from(Marks marks) {
        var specification = marks.specification().value();
        var pressure = marks.servicePressure();
        var tare = marks.tare();
        var manufactured = marks.manufactured();
        return new Marked(marks.kind(), specification, dotFamily(marks.kind(), specification),
                manufactured == null ? null : manufactured.value(),
                pressure == null ? specification.servicePressurePsig() : Integer.valueOf(pressure.psig()),
                tare == null ? null : tare.value().pounds());
    }

    private static @Nullable String dotFamily(ContainerKind kind, Specification specification) {
        if (kind != ContainerKind.CYLINDER) {
            return null;
        }
        var second = specification.alsoMarked();
        return DOT.contains(specification.authority())
                ? specification.family()
                : second != null && DOT.contains(second.authority()) ? second.family() : null;
    }

    boolean isCylinder() {
        return kind == ContainerKind.CYLINDER;
    }

    boolean isUnderPermit() {
        return specification.authority() == Authority.SPECIAL_PERMIT;
    }

    public boolean isOf4Series() {
        return dotFamily != null && dotFamily.startsWith("4");
    }

    boolean isOf(String family) {
        return family.equals(dotFamily);
    }
}
