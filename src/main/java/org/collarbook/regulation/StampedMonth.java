package org.collarbook.regulation;

import java.time.YearMonth;

/**
 * Reads the month of the original test: month before year, as 49 CFR 178.35(f) has it ("AB 5-95"), so that "1202" is
 * December 2002; year before month under UN and ADR.
 */
public final class StampedMonth {

    /**
     * Where nothing else is known, two digits name a year from this one on. Common practice, no source: LP-gas cylinders
     * still about are not older, and an older one is written with four digits.
     */
    public static final int EARLIEST_BY_TWO_DIGITS = 1940;

    private static final String EXPECTED = "month and year as stamped, such as 5-95, 05/2004, 0595, 5 A 95 or 2004-05";

    private StampedMonth() {}

    public static Reading<YearMonth> read(String raw, Collar collar) {
        StampText text = StampText.of(raw);
        String capitals = text.capitals();
        DateStamp date = DateStamp.at(capitals);
        if (date == null) {
            return text.unreadable(DateStamp.stopsAt(capitals), EXPECTED);
        }
        DateStamp.Number rin = date.rin();
        if (rin != null) {
            return text.unreadable(rin.at(), "no RIN, which the original test does not bear; " + EXPECTED);
        }
        return date.end() < capitals.length()
                ? text.unreadable(date.end(), "nothing after the date; " + EXPECTED)
                : new DateReading(text, date, collar).read(DateOrder.of(collar.specification(), date, false));
    }

    /** In the form that is always read back as the same month. */
    public static String print(YearMonth month) {
        return month.toString();
    }
}
