package org.collarbook.intake;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

/**
 * A quantity whose unit may stand beside its number, in a column of its own, or be told by a map for the whole column:
 * the cell comes to have it beside its number, and number and unit stay as they were written.
 */
enum Units {

    CAPACITY(LedgerColumn.WATER_CAPACITY, LedgerColumn.WATER_CAPACITY_UNIT,
            EnumSet.of(Unit.LB, Unit.KG, Unit.L, Unit.GAL)),
    TARE(LedgerColumn.TARE, LedgerColumn.TARE_UNIT, EnumSet.of(Unit.LB, Unit.KG));

    private static final Pattern LABEL = Pattern.compile("(?i)\\bw\\.? ?c\\.?$");
    private static final Pattern ASIDE = Pattern.compile("[. _()-]");
    private static final Pattern IMPERIAL = Pattern.compile("(IMP|IMPERIAL|UK|BRITISH|CANADIAN)(GAL|GALS|GALLON"
            + "|GALLONS)|(GAL|GALS|GALLON|GALLONS)(IMP|IMPERIAL|UK)|IG|IMPG|UKG");

    /** A decimal point here, what parts the thousands there: taken for the one, it may be a thousandth of the other. */
    private static final Pattern COMMA = Pattern.compile("\\d ?,");

    private enum Unit {
        LB("lb"),
        KG("kg"),
        L("L"),
        GAL("gal");

        private final String symbol;

        Unit(String symbol) {
            this.symbol = symbol;
        }

        static @Nullable Unit of(String letters) {
            return switch (letters) {
                case "LB", "LBS", "POUND", "POUNDS", "#" -> LB;
                case "KG", "KGS", "KILO", "KILOS", "KILOGRAM", "KILOGRAMS" -> KG;
                case "L", "LITRE", "LITRES", "LITER", "LITERS" -> L;
                case "GAL", "GALS", "GALLON", "GALLONS", "USGAL", "USGALS", "USGALLON", "USGALLONS", "USG", "USWG" ->
                    GAL;
                default -> null;
            };
        }
    }

    private final LedgerColumn quantity;
    private final LedgerColumn column;
    private final Set<Unit> units;

    Units(LedgerColumn quantity, LedgerColumn column, Set<Unit> units) {
        this.quantity = quantity;
        this.column = column;
        this.units = units;
    }

    /** The units of the column; null where it has none. */
    static @Nullable Units of(LedgerColumn quantity) {
        return Arrays.stream(values()).filter(units -> units.quantity == quantity).findFirst().orElse(null);
    }

    List<String> symbols() {
        return units.stream().map(unit -> unit.symbol).toList();
    }

    String accepted() {
        return "one of " + String.join(", ", symbols());
    }

    /** Whether a unit of this quantity is called so. */
    boolean knows(String unit) {
        var known = Unit.of(letters(unit));
        return known != null && units.contains(known);
    }

    /** By its cell, by the cell of its unit, and by the unit that the map tells. */
    void join(@Nullable String[] cells, @Nullable String told, Problems problems) {
        var cell = cells[quantity.ordinal()];
        if (cell != null && hasComma(cell)) {
            problems.refuse(quantity, "INVALID_" + quantity.name(), cell, "a decimal point and no comma: "
                    + cell.replace(',', '.') + ", unless the comma parts thousands");
            cells[quantity.ordinal()] = null;
        } else if (cell != null && isImperial(beside(cell))) {
            cells[quantity.ordinal()] = refuseImperial(quantity, cell, problems);
        } else if (cell != null) {
            var first = told == null ? cell : joined(cell, told, quantity, problems);
            var unit = cells[column.ordinal()];
            cells[quantity.ordinal()] = first == null || unit == null ? first : joined(first, unit, column, problems);
        }
    }

    private @Nullable String joined(String cell, String unit, LedgerColumn at, Problems problems) {
        if (isImperial(unit)) {
            return refuseImperial(at, unit, problems);
        }
        if (!knows(unit)) {
            problems.refuse(at, "UNKNOWN_UNIT", unit, accepted());
            return null;
        }
        var beside = letters(beside(cell));
        if (beside.isEmpty()) {
            return cell + " " + unit;
        }
        var own = Unit.of(beside);
        if (own != null && own != Unit.of(letters(unit))) {
            problems.refuse(at, "UNIT_CONTRADICTS", cell + ", " + unit, "the unit beside the number, " + own.symbol
                    + ", or none");
            return null;
        }
        return cell;
    }

    private @Nullable String refuseImperial(LedgerColumn at, String found, Problems problems) {
        problems.refuse(at, "IMPERIAL_GALLON", found, accepted() + ", the gallon being that of the United States"
                + " (3.785412 L); the imperial gallon (4.54609 L) is not read");
        return null;
    }

    static boolean hasComma(String cell) {
        return COMMA.matcher(cell).find();
    }

    /** What stands behind the number, but for "WC". */
    private static String beside(String cell) {
        int end = cell.length();
        while (end > 0 && !Character.isDigit(cell.charAt(end - 1))) {
            end--;
        }
        return LABEL.matcher(cell.substring(end).strip()).replaceAll("");
    }

    private static boolean isImperial(String unit) {
        return IMPERIAL.matcher(letters(unit)).matches();
    }

    private static String letters(String unit) {
        return ASIDE.matcher(unit).replaceAll("").toUpperCase(Locale.ROOT);
    }
}
