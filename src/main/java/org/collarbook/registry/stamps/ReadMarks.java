package org.collarbook.registry.stamps;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/**
 * What the lines make together; null where none says it or two contradict each other. {@code condemned} is the rule that
 * a mark of condemnation stands for, and {@code warnings} bar the container from service.
 */
public record ReadMarks(@Nullable Specification specification, @Nullable MakerSymbol maker, @Nullable Serial serial,
        @Nullable YearMonth manufactured, @Nullable WaterCapacity waterCapacity, @Nullable Tare tare,
        @Nullable BigDecimal tareInKilograms, @Nullable String workingPressure, @Nullable String testPressure,
        @Nullable Tag tag, List<RequalificationMark> requalifications, @Nullable Citation condemned,
        List<String> warnings) {}
