package org.collarbook.intake;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.collarbook.custody.SiteKind;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Use;

/** What sort of thing stands in a column, where a form of its own is read there. */
final class ColumnSorts {

    static final Set<LedgerColumn> DAYS = EnumSet.of(LedgerColumn.FILLED_ON, LedgerColumn.EMPTIED_ON,
            LedgerColumn.OUT_OF_SERVICE_SINCE, LedgerColumn.PERMIT_EXPIRES);
    static final Set<LedgerColumn> MONTHS = EnumSet.of(LedgerColumn.MANUFACTURED, LedgerColumn.LAST_TEST_MONTH,
            LedgerColumn.SCHEME_DUE);
    /** Signs that somebody gave: none of them is a date, though a spreadsheet may have made one of it. */
    static final Set<LedgerColumn> SIGNS = EnumSet.of(LedgerColumn.SERIAL, LedgerColumn.MAKER, LedgerColumn.TAG,
            LedgerColumn.SITE, LedgerColumn.CUSTOMER, LedgerColumn.RIN, LedgerColumn.LAST_TEST_MARK,
            LedgerColumn.PERMIT_NUMBER);

    /** The only words that may stand in a column. */
    static final Map<LedgerColumn, List<String>> WORDS = words();

    /** Where a map may give words of its own besides: codes and names, marks as somebody wrote them, what is in it. */
    static final Set<LedgerColumn> ALSO_WORDS = EnumSet.of(LedgerColumn.OWNER, LedgerColumn.SITE, LedgerColumn.CUSTOMER,
            LedgerColumn.MAKER, LedgerColumn.SPECIFICATION, LedgerColumn.LADING, LedgerColumn.LAST_TEST_MARK);

    /** Names of what may be in a container that the rules know; none of them means another. */
    static final Set<String> LADINGS = Set.of("LPG", "ANHYDROUS_AMMONIA", "ACETYLENE", "METHYL_BROMIDE",
            "CARBON_DIOXIDE", "OXYGEN", "AIR", "NITROGEN", "LIQUEFIED_HYDROCARBON");

    private ColumnSorts() {}

    private static Map<LedgerColumn, List<String>> words() {
        var words = new EnumMap<LedgerColumn, List<String>>(LedgerColumn.class);
        words.put(LedgerColumn.KIND, of(ContainerKind.class));
        words.put(LedgerColumn.USE, of(Use.class));
        words.put(LedgerColumn.INSTALLATION, of(Installation.class));
        words.put(LedgerColumn.SITE_KIND, of(SiteKind.class));
        words.put(LedgerColumn.STATUS, StatusReader.words());
        words.put(LedgerColumn.STEEL, of(Steel.class));
        words.put(LedgerColumn.RELIEF_VALVE, of(ReliefValve.class));
        words.put(LedgerColumn.EXTENDED_PERIOD, of(ExtendedPeriod.class));
        words.put(LedgerColumn.OWNED, List.of("yes", "no", "unknown"));
        for (var column : EnumSet.of(LedgerColumn.EXCLUSIVE, LedgerColumn.CORROSION_FREE, LedgerColumn.COATED,
                LedgerColumn.MARKS_LEGIBLE, LedgerColumn.COLLAR_READ, LedgerColumn.LINED, LedgerColumn.OWNER_CONSENT)) {
            words.put(column, List.of("yes", "no"));
        }
        words.put(LedgerColumn.WATER_CAPACITY_UNIT, Units.CAPACITY.symbols());
        words.put(LedgerColumn.TARE_UNIT, Units.TARE.symbols());
        return words;
    }

    private static <E extends Enum<E>> List<String> of(Class<E> words) {
        return Arrays.stream(words.getEnumConstants()).map(Enum::name).toList();
    }
}
