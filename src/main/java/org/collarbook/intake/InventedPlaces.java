package org.collarbook.intake;

import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/** Places that do not exist, with names made up for them: a depot, two delivery trucks, a requalifier, and customers. */
final class InventedPlaces {

    static final int DEPOT = 0;
    static final int FIRST_TRUCK = 1;
    static final int REQUALIFIER = 3;
    static final int FIRST_CUSTOMER = 4;

    private static final List<String> TOWNS = List.of("Brackenholt", "Tarnwick", "Velmora", "Quillhaven", "Dunmarrow",
            "Osterfen", "Halvick", "Marrowby", "Pellingmoor", "Grintham", "Yarrowmere", "Kestrelby", "Ondermoor",
            "Wickenfold", "Brindlow");
    private static final List<String> TRADES = List.of("Cold Stores", "Foundry", "Orchards", "Packing", "Brickworks",
            "Timber", "Warehousing", "Dairy", "Bottling", "Nurseries");
    private static final List<String> YARDS = List.of("", ", north dock", ", \"old\" yard", ", shed 2");

    private final long seed;
    private final int sites;

    InventedPlaces(long seed, int sites) {
        this.seed = seed;
        this.sites = Math.max(sites, FIRST_CUSTOMER + 1);
    }

    int anyCustomersSite(SplittableRandom random) {
        return random.nextInt(FIRST_CUSTOMER, sites);
    }

    /** The same cells for every row that tells of the site. */
    Map<LedgerColumn, String> cells(int site) {
        var cells = new EnumMap<LedgerColumn, String>(LedgerColumn.class);
        if (site >= FIRST_CUSTOMER) {
            cells.put(LedgerColumn.SITE, "S-%03d".formatted(site));
            cells.put(LedgerColumn.SITE_NAME, customerName(site) + YARDS.get(site % YARDS.size()));
            cells.put(LedgerColumn.SITE_KIND, "CUSTOMER");
            cells.put(LedgerColumn.CUSTOMER, "C-%03d".formatted(customer(site)));
            cells.put(LedgerColumn.CUSTOMER_NAME, customerName(site));
        } else {
            cells.putAll(own(site));
        }
        if (site != FIRST_TRUCK && site != FIRST_TRUCK + 1) {
            var random = new SplittableRandom(seed + 7919L * site);
            cells.put(LedgerColumn.LATITUDE, degrees(41.0 + random.nextDouble(-0.5, 0.5)));
            cells.put(LedgerColumn.LONGITUDE, degrees(-99.3 + random.nextDouble(-0.6, 0.6)));
        }
        return cells;
    }

    private static Map<LedgerColumn, String> own(int site) {
        return switch (site) {
            case DEPOT -> Map.of(LedgerColumn.SITE, "D-01", LedgerColumn.SITE_NAME, "Tarnwick depot",
                    LedgerColumn.SITE_KIND, "DEPOT");
            case REQUALIFIER -> Map.of(LedgerColumn.SITE, "R-01", LedgerColumn.SITE_NAME, "Ondermoor Cylinder Testing",
                    LedgerColumn.SITE_KIND, "REQUALIFIER");
            default -> Map.of(LedgerColumn.SITE, "V-0" + site, LedgerColumn.SITE_NAME, "Truck " + site,
                    LedgerColumn.SITE_KIND, "VEHICLE");
        };
    }

    /** Four customers have five sites between them. */
    private static int customer(int site) {
        return site - (site - FIRST_CUSTOMER) / 5;
    }

    static String customerName(int site) {
        int number = customer(site);
        int round = number / (TOWNS.size() * TRADES.size());
        return TOWNS.get(number % TOWNS.size()) + " " + TRADES.get(number / TOWNS.size() % TRADES.size())
                + (round == 0 ? "" : " No. " + (round + 1));
    }

    private static String degrees(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
