package org.collarbook.registry;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;

import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.StampText;
import org.collarbook.regulation.WaterCapacity;
import org.collarbook.regulation.WaterCapacity.Unit;

/** Water capacities that a container on this earth can have; beyond them a unit or a decimal point has slipped. */
public final class Capacities {

    private static final String EXPECTED = "a water capacity from 0.1 lb to 10,000,000 lb";
    private static final BigDecimal LEAST = new BigDecimal("0.1");
    private static final BigDecimal MOST = new BigDecimal("10000000");

    private Capacities() {}

    /**
     * A bare number after "WC" is in pounds on a cylinder under DOT or ICC: common practice, no source, since 49 CFR does
     * not ask for the stamp. On any other the unit is not guessed.
     */
    public static Reading<WaterCapacity> read(String text, Collar collar) {
        var bare = WaterCapacity.withoutUnit(text);
        if (bare == null) {
            return Reading.of(text, plausible(text, WaterCapacity.tryParse(text)));
        }
        var warnings = StampText.of(text).warnings();
        var pounds = new WaterCapacity(bare, Unit.LB);
        if (!isPlausible(pounds)) {
            return Reading.of(text, StampText.of(text).rejected(0, EXPECTED));
        }
        if (isInPounds(collar)) {
            warnings.add("no unit is stamped; read as pounds, as the trade stamps it");
            return new Reading.Read<>(text, pounds, warnings);
        }
        var units = collar.isUnder(Authority.TC, Authority.UN, Authority.ADR)
                ? EnumSet.of(Unit.L, Unit.KG)
                : EnumSet.allOf(Unit.class);
        return new Reading.Ambiguous<>(text, Arrays.stream(Unit.values()).filter(units::contains)
                .map(unit -> new WaterCapacity(bare, unit)).toList(), "no unit is stamped");
    }

    private static boolean isInPounds(Collar collar) {
        var specification = collar.specification();
        return specification != null && List.of(Authority.DOT, Authority.ICC).contains(specification.authority())
                && Kinds.of(specification).equals(EnumSet.of(ContainerKind.CYLINDER));
    }

    private static ParseResult<WaterCapacity> plausible(String text, ParseResult<WaterCapacity> result) {
        return result instanceof Parsed<WaterCapacity>(var capacity, var _) && !isPlausible(capacity)
                ? StampText.of(text).rejected(0, EXPECTED)
                : result;
    }

    private static boolean isPlausible(WaterCapacity capacity) {
        var pounds = capacity.toPounds();
        return pounds.compareTo(LEAST) >= 0 && pounds.compareTo(MOST) <= 0;
    }
}
