package org.collarbook.intake;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteKind;
import org.collarbook.intake.LedgerEntry.GivenSite;
import org.jspecify.annotations.Nullable;

/** Reads where a row says its container stands. */
final class SiteReader {

    private static final int LONGEST_CODE = 40;
    private static final int LONGEST_NAME = 200;

    private SiteReader() {}

    static @Nullable GivenSite read(Cells cells) {
        var code = cells.text(LedgerColumn.SITE, LONGEST_CODE);
        var name = cells.text(LedgerColumn.SITE_NAME, LONGEST_NAME);
        var kind = cells.word(LedgerColumn.SITE_KIND, SiteKind.class);
        var customer = cells.text(LedgerColumn.CUSTOMER, LONGEST_CODE);
        var customerName = cells.text(LedgerColumn.CUSTOMER_NAME, LONGEST_NAME);
        var coordinates = coordinates(cells);
        if (customerName != null && cells.isBlank(LedgerColumn.CUSTOMER)) {
            cells.refuse(LedgerColumn.CUSTOMER, "MISSING", "the code of the customer whose name is given");
        }
        if (cells.isBlank(LedgerColumn.SITE)
                && (name != null || kind != null || customer != null || coordinates != null)) {
            cells.refuse(LedgerColumn.SITE, "MISSING", "the code of the site that the row tells of");
        }
        return code == null ? null : new GivenSite(code, name, kind, customer, customerName, coordinates);
    }

    private static @Nullable Coordinates coordinates(Cells cells) {
        var latitude = cells.degrees(LedgerColumn.LATITUDE, 90);
        var longitude = cells.degrees(LedgerColumn.LONGITUDE, 180);
        if (cells.isBlank(LedgerColumn.LATITUDE) != cells.isBlank(LedgerColumn.LONGITUDE)) {
            cells.refuse(cells.isBlank(LedgerColumn.LATITUDE) ? LedgerColumn.LATITUDE : LedgerColumn.LONGITUDE,
                    "MISSING", "latitude and longitude together, or neither");
        }
        return latitude == null || longitude == null ? null : new Coordinates(latitude, longitude);
    }
}
