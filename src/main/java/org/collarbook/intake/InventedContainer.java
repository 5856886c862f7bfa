package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * One made-up line of the ledger: a container as a distributor's clerks would have written it down over the years, with
 * much left out and everything spelt several ways. The same seed and number give the same line.
 */
final class InventedContainer {

    private static final List<String> MAKERS = List.of("KVR", "OBN", "TUL", "ZEF", "WYC");
    private static final List<String> RINS = List.of("X901", "X902", "Y907");

    private final SplittableRandom random;
    private final LocalDate asOf;
    private final InventedPlaces places;
    private final Map<LedgerColumn, String> cells = new EnumMap<>(LedgerColumn.class);

    private InventedContainer(SplittableRandom random, LocalDate asOf, InventedPlaces places) {
        this.random = random;
        this.asOf = asOf;
        this.places = places;
    }

    static Map<LedgerColumn, String> cells(long number, SplittableRandom random, LocalDate asOf,
            InventedPlaces places) {
        var container = new InventedContainer(random, asOf, places);
        if (number < 2) {
            container.truck((int) number + InventedPlaces.FIRST_TRUCK);
        } else {
            container.inUse(InventedMake.any(random));
        }
        container.cells.put(LedgerColumn.SERIAL, "%c%07d".formatted((char) ('A' + random.nextInt(26)), number));
        if (chance(random, 60)) {
            container.cells.put(LedgerColumn.TAG, "CB-%08d".formatted(number));
        }
        return container.cells;
    }

    private static boolean chance(SplittableRandom random, int inHundred) {
        return random.nextInt(100) < inHundred;
    }

    private boolean chance(int inHundred) {
        return chance(random, inHundred);
    }

    private String any(List<String> words) {
        return words.get(random.nextInt(words.size()));
    }

    private void truck(int site) {
        var made = YearMonth.from(asOf).minusMonths(random.nextInt(60, 200));
        cells.putAll(places.cells(site));
        cells.put(LedgerColumn.SPECIFICATION, "MC-331");
        cells.put(LedgerColumn.MAKER, any(MAKERS));
        cells.put(LedgerColumn.MANUFACTURED, made.toString());
        cells.put(LedgerColumn.WATER_CAPACITY, "3200 gal");
        cells.put(LedgerColumn.OWNER, "distributor");
        cells.put(LedgerColumn.LAST_TEST_MARK, stamp(YearMonth.from(asOf).minusMonths(random.nextInt(2, 11)), "V"));
    }

    private void inUse(InventedMake make) {
        var made = YearMonth.from(asOf).minusMonths(random.nextInt(2, make.isTank() ? 480 : 380));
        int site = place(make);
        cells.putAll(places.cells(site));
        cells.put(LedgerColumn.SPECIFICATION, spelt(make.specification()));
        cells.put(LedgerColumn.KIND, make.isTank() ? "STATIONARY_TANK" : chance(50) ? "CYLINDER" : "");
        cells.put(LedgerColumn.MAKER, chance(6) ? "" : any(MAKERS));
        cells.put(LedgerColumn.MANUFACTURED, month(made));
        cells.put(LedgerColumn.WATER_CAPACITY, chance(4)
                ? ""
                : chance(20)
                        ? make.capacity().replace(" ", "")
                        : make.capacity());
        cells.put(LedgerColumn.TARE, chance(10) ? "" : make.tare());
        cells.put(LedgerColumn.OWNER, make.isTank() && site >= InventedPlaces.FIRST_CUSTOMER && chance(60)
                ? InventedPlaces.customerName(site)
                : "distributor");
        cells.put(LedgerColumn.USE, make.isForLiftTrucks() ? "INDUSTRIAL_TRUCK" : make.isTank() ? "" : "FUEL");
        if (make.isTank()) {
            cells.put(LedgerColumn.SERVICE_PRESSURE, "250");
            cells.put(LedgerColumn.INSTALLATION, chance(85) ? "ABOVEGROUND" : "UNDERGROUND");
        } else {
            history(made);
        }
        var filled = asOf.minusDays(random.nextInt(5, 900));
        if (chance(70) && filled.isAfter(made.atEndOfMonth())) {
            cells.put(LedgerColumn.FILLED_ON, filled.toString());
        }
    }

    private int place(InventedMake make) {
        int at = make.isTank() ? 99 : random.nextInt(100);
        return at < 8
                ? InventedPlaces.DEPOT
                : at < 10 ? InventedPlaces.REQUALIFIER : places.anyCustomersSite(random);
    }

    private String spelt(String specification) {
        return switch (random.nextInt(6)) {
            case 0 -> specification.replace("DOT-", "DOT ");
            case 1 -> specification.replace("DOT-", "");
            default -> specification;
        };
    }

    private String month(YearMonth month) {
        int m = month.getMonthValue();
        int y = month.getYear() % 100;
        return switch (random.nextInt(5)) {
            case 0 -> "%d-%02d".formatted(m, y);
            case 1 -> "%02d/%d".formatted(m, month.getYear());
            case 2 -> "%d A %02d".formatted(m, y);
            case 3 -> "%02d%02d".formatted(m, y);
            default -> month.toString();
        };
    }

    /** Tested if it is old enough; what was not written down stays blank, and a few have a month and nothing more. */
    private void history(YearMonth made) {
        var today = YearMonth.from(asOf);
        if (made.isAfter(today.minusMonths(144))) {
            cells.put(LedgerColumn.LAST_TEST_MARK, chance(8) ? "" : "none");
            return;
        }
        var tested = today.minusMonths(random.nextInt(1, chance(85) ? 58 : 110));
        int known = random.nextInt(100);
        if (known < 6) {
            return;
        }
        if (known < 15) {
            cells.put(LedgerColumn.LAST_TEST_MONTH, tested.toString());
            return;
        }
        int method = random.nextInt(100);
        cells.put(LedgerColumn.LAST_TEST_MARK, stamp(tested, method < 65 ? "E" : method < 85 ? "S" : ""));
    }

    /** Six hands, six ways to write down one stamp. */
    private String stamp(YearMonth month, String suffix) {
        int m = month.getMonthValue();
        int y = month.getYear() % 100;
        return switch (random.nextInt(6)) {
            case 0 -> "%d-%02d%s".formatted(m, y, suffix);
            case 1 -> "%02d/%02d %s".formatted(m, y, suffix);
            case 2 -> "%02d%02d%s".formatted(m, y, suffix);
            case 3 -> "%d %02d %s".formatted(m, y, suffix);
            case 4 -> "%d-%d%s".formatted(m, month.getYear(), suffix);
            default -> "%d/%s/%02d %s".formatted(m, any(RINS), y, suffix);
        };
    }
}
