package org.collarbook.intake;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/**
 * The template of a ledger: every column, what it means and two examples (a forklift cylinder and a storage tank). A
 * blank cell says nothing: it is "not known", and leaves what the register knows as it is.
 */
enum LedgerColumn {

    KIND(false, "CYLINDER, CARGO_TANK, PORTABLE_TANK or STATIONARY_TANK; may be blank where the specification allows"
            + " one kind only", "CYLINDER", "STATIONARY_TANK"),
    SPECIFICATION(true,
            "the specification as stamped: DOT-4BA240, DOT-4E240, TC-4BAM17, DOT-SP12345, UN, EN 1442, ASME,"
                    + " MC-331",
            "DOT-4E240", "ASME"),
    MAKER(false, "the maker's symbol as stamped", "KVR", "OBN"),
    SERIAL(true, "the serial number as stamped, 1 to 40 characters", "B204417", "881204"),
    MANUFACTURED(false, "month of the original test as stamped: 5-04, 05/2004, 5 A 04, or 2004-05; not in the future",
            "5-04", "1998-07"),
    WATER_CAPACITY(false, "a number and its unit: lb, kg, L or gal", "80.0 lb", "499 gal"),
    WATER_CAPACITY_UNIT(false, "lb, kg, L or gal (of the United States), where the number has none beside it; never"
            + " another than the one beside it", "", ""),
    TARE(false, "a number and its unit, lb or kg; or TW and pounds", "28.6 lb", ""),
    TARE_UNIT(false, "lb or kg, where the number has none beside it", "", ""),
    SERVICE_PRESSURE(false, "the marked service pressure in psig, where it is told beside the specification", "",
            "250"),
    TAG(false, "what a scanner reads: GRAI (8003), GIAI (8004) or a plain barcode; in use once", "CB-000417", ""),
    OWNER(false, "whose it is: the word distributor, or a name", "distributor", "Quillhaven Orchards"),
    USE(false, "FUEL, INDUSTRIAL_TRUCK, FIRE_EXTINGUISHER, SCUBA, AIRCRAFT or HOT_AIR_BALLOON", "INDUSTRIAL_TRUCK", ""),
    LADING(false, "what is in it: LPG, ANHYDROUS_AMMONIA, ...", "LPG", "LPG"),
    EXCLUSIVE(false, "yes or no: it has held nothing else", "yes", "yes"),
    CORROSION_FREE(false, "yes or no: the lading is commercially free of corroding components", "yes", "yes"),
    COATED(false, "yes or no: it has a protective coating outside", "yes", ""),
    MARKS_LEGIBLE(false, "yes or no: every required mark can be read", "yes", "yes"),
    INSTALLATION(false, "ABOVEGROUND or UNDERGROUND, of a storage tank", "", "ABOVEGROUND"),
    SITE(false, "your code of the place where it stands, 1 to 40 characters", "S-014", "S-031"),
    SITE_NAME(false, "its name; the code when blank", "Tarnwick Cold Stores, north dock", "Quillhaven Orchards"),
    SITE_KIND(false, "CUSTOMER, DEPOT, VEHICLE or REQUALIFIER; needed for a site that the register does not know",
            "CUSTOMER", "CUSTOMER"),
    CUSTOMER(false, "your code of the customer, for a site of kind CUSTOMER", "C-014", "C-031"),
    CUSTOMER_NAME(false, "the customer's name; the code when blank", "Tarnwick Cold Stores", "Quillhaven Orchards"),
    LATITUDE(false, "of the site, WGS 84, decimal degrees; with longitude or not at all", "41.1042", "40.8810"),
    LONGITUDE(false, "of the site, WGS 84, decimal degrees", "-99.0817", "-98.7325"),
    LAST_TEST_MARK(false, "the last requalification mark as stamped: 3-12E, 5/B045/16 E, 10-99 P, V, L; or the word"
            + " none: the collar was read and bears no later mark", "3-19E", "none"),
    LAST_TEST_MONTH(false, "the month of the last test where no mark was written down: 2019-03 or 3-19; how it was"
            + " tested stays unknown unless the declaration's bareMonthMethod says so", "", ""),
    RIN(false, "the requalifier's identification number stamped with the last test", "B045", ""),
    FILLED_ON(false, "the day of the last fill, YYYY-MM-DD", "2026-03-02", "");

    private static final Map<String, LedgerColumn> BY_WORD = Arrays.stream(values())
            .collect(Collectors.toUnmodifiableMap(LedgerColumn::word, Function.identity()));

    private final boolean required;
    private final String meaning;
    private final List<String> examples;

    LedgerColumn(boolean required, String meaning, String... examples) {
        this.required = required;
        this.meaning = meaning;
        this.examples = List.of(examples);
    }

    /** As the header has it. */
    String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The column must be there, and no cell of it blank. */
    boolean required() {
        return required;
    }

    String meaning() {
        return meaning;
    }

    List<String> examples() {
        return examples;
    }

    static @Nullable LedgerColumn of(String heading) {
        return BY_WORD.get(heading.strip().toLowerCase(Locale.ROOT));
    }

    static List<String> words() {
        return Arrays.stream(values()).map(LedgerColumn::word).toList();
    }
}
