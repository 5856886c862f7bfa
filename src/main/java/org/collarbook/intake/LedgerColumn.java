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
    FILLED_ON(false, "the day of the last fill, YYYY-MM-DD", "2026-03-02", ""),
    // further facts, which few containers have
    EMPTIED_ON(false, "the day on which it was last empty, YYYY-MM-DD", "", ""),
    STATUS(false,
            "what keeps it out of service, apart by ;, such as leaking since 2026-03-02 | note at the valve; or in"
                    + " service; condemned, rejected, or a reason of GET /api/holds/reasons in any case. Never lifts a hold",
            "",
            ""),
    OTHER_TESTS(false,
            "tests beside the last mark, apart by ;: a mark as stamped, or 2014-03 (or the day) and how it was"
                    + " tested; and where known | RIN B045 | star | plus | rejected | condemned | stamped 3-14E | declared 1",
            "", ""),
    COLLAR_READ(false, "yes or no: the collar was read, so that no test told means that none is stamped", "", ""),
    LINED(false, "yes or no: it is lined", "", ""),
    STEEL(false, "NQT or QT, of a cargo tank", "", ""),
    RELIEF_VALVE(false, "INTERNAL or EXTERNAL, of a tank", "", "EXTERNAL"),
    PARTS(false,
            "valves, gauges and labels, apart by ;, such as relief valve | made 2015-03 | fitted 2016-01-05 | maker"
                    + " KVR; and of one taken out | removed 2024-01-05 | reason worn | for good",
            "",
            "relief valve | made 2015-03 | fitted 2016-01-05"),
    OUT_OF_SERVICE(false, "of a tank, apart by ;, when it was out of service: since 2026-01-05 | reason sold, or"
            + " 2020-01-05 to 2022-02-01 | reason moved", "", ""),
    OUT_OF_SERVICE_SINCE(false, "the day since which it is said to be out of service, where no stop is told", "", ""),
    PERMIT_NUMBER(false, "of the special permit that it is tested under, 1 to 40 characters", "", ""),
    PERMIT_EXPIRES(false, "the permit's last day, YYYY-MM-DD", "", ""),
    PERMIT_INTERVAL_YEARS(false, "years between tests that the permit gives, 1 to 40", "", ""),
    EXTENDED_PERIOD(false, "P15Y, COP31, SPECIAL_PROVISION_V, TYPE_APPROVAL or NONE", "", ""),
    SCHEME_DUE(false, "the month that a written scheme of examination gives, YYYY-MM", "", ""),
    OWNED(false, "yes, no or unknown: it is the distributor's own; blank where the owner tells it", "", ""),
    OWNER_CONSENT(false, "yes or no: the owner consents to its being filled", "", "yes"),
    SITE_ZONE(false, "the site's time zone, such as America/Chicago; the declaration's when blank", "", ""),
    SITE_JURISDICTION(false, "whose rules govern at the site, such as US or CA-BC; the declaration's when blank", "",
            ""),
    SITE_ADDRESS(false, "the site's address, 1 to 400 characters", "", ""),
    JURISDICTION(false, "whose rules govern it while no site tells; on somebody's declaration alone", "", ""),
    DECLARED(false, "which of the row's facts rest on a declaration, for each declaration apart by ;, each such as"
            + " coated, lading; tests stands for tests that name it", "", ""),
    DECLARED_BY(false, "who declared it, one for each declaration", "", ""),
    DECLARED_ON(false, "on which day, one for each declaration", "", ""),
    DECLARED_STATEMENT(false, "in which words, one for each declaration", "", "");

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
