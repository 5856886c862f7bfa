package org.collarbook.intake;

import java.util.SplittableRandom;

/** What stands at customers' sites, with how many in a hundred; capacities as the trade stamps them. */
enum InventedMake {
    FORKLIFT(46, "DOT-4E240", "79.8 lb", "28.5 lb"),
    FORKLIFT_STEEL(12, "DOT-4BA240", "79.8 lb", "38.0 lb"),
    FORKLIFT_WELDED(6, "DOT-4BW240", "79.8 lb", "37.4 lb"),
    TWENTY(9, "DOT-4BA240", "47.6 lb", "17.2 lb"),
    FORTY(3, "DOT-4BA240", "95.2 lb", "29.0 lb"),
    HUNDRED(7, "DOT-4BW240", "238 lb", "68.0 lb"),
    FOUR_TWENTY(4, "DOT-4BW240", "1000 lb", "270 lb"),
    CANADIAN(1, "TC-4BAM17", "47.6 lb", "18.1 lb"),
    TANK_100(2, "ASME", "100 gal", ""),
    TANK_288(3, "ASME", "288 gal", ""),
    TANK_499(5, "ASME", "499 gal", ""),
    TANK_1150(2, "ASME", "1150 gal", "");

    private final int share;
    private final String specification;
    private final String capacity;
    private final String tare;

    InventedMake(int share, String specification, String capacity, String tare) {
        this.share = share;
        this.specification = specification;
        this.capacity = capacity;
        this.tare = tare;
    }

    String specification() {
        return specification;
    }

    String capacity() {
        return capacity;
    }

    String tare() {
        return tare;
    }

    boolean isTank() {
        return specification.equals("ASME");
    }

    boolean isForLiftTrucks() {
        return ordinal() <= FORKLIFT_WELDED.ordinal();
    }

    static InventedMake any(SplittableRandom random) {
        int at = random.nextInt(100);
        for (var make : values()) {
            at -= make.share;
            if (at < 0) {
                return make;
            }
        }
        return FORKLIFT;
    }
}
