package org.collarbook.intake;

import java.time.DateTimeException;
import java.time.ZoneId;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteKind;
import org.collarbook.intake.LedgerEntry.GivenSite;
import org.collarbook.regulation.Jurisdiction;
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
        var zone = zone(cells);
        var jurisdiction = jurisdiction(cells);
        var address = cells.text(LedgerColumn.SITE_ADDRESS, 400);
        if (customerName != null && cells.isBlank(LedgerColumn.CUSTOMER)) {
            cells.refuse(LedgerColumn.CUSTOMER, "MISSING", "the code of the customer whose name is given");
        }
        if (cells.isBlank(LedgerColumn.SITE)
                && (name != null || kind != null || customer != null || coordinates != null || zone != null
                        || jurisdiction != null || address != null)) {
            cells.refuse(LedgerColumn.SITE, "MISSING", "the code of the site that the row tells of");
        }
        return code == null
                ? null
                : new GivenSite(code, name, kind, customer, customerName, coordinates, zone,
                        jurisdiction, address);
    }

    private static @Nullable ZoneId zone(Cells cells) {
        var text = cells.get(LedgerColumn.SITE_ZONE);
        try {
            return text == null ? null : ZoneId.of(text);
        } catch (DateTimeException unknown) {
            cells.refuse(LedgerColumn.SITE_ZONE, "UNKNOWN_ZONE", "a time zone such as America/Chicago");
            return null;
        }
    }

    private static @Nullable Jurisdiction jurisdiction(Cells cells) {
        var text = cells.get(LedgerColumn.SITE_JURISDICTION);
        if (text == null || Jurisdiction.isWellFormed(text)) {
            return text == null ? null : new Jurisdiction(text);
        }
        cells.refuse(LedgerColumn.SITE_JURISDICTION, "INVALID_JURISDICTION", "a code such as US or CA-BC");
        return null;
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
