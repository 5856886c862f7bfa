package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;

import org.collarbook.registry.Declaration;
import org.collarbook.registry.Ownership;
import org.collarbook.registry.Particulars;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

/** What a row says of a container beside its marks; what a declaration adds is added later. */
final class ParticularsReader {

    static final String LADING = "a name such as LPG or ANHYDROUS_AMMONIA";
    static final String DISTRIBUTOR = "distributor";

    private final LocalDate asOf;
    private final boolean blankMeansNone;

    ParticularsReader(LocalDate asOf, @Nullable Declaration said) {
        this.asOf = asOf;
        blankMeansNone = said != null && Boolean.TRUE.equals(said.blankMeansNone());
    }

    Particulars read(Cells cells) {
        return new Particulars(cells.yesOrNo(LedgerColumn.COATED), cells.yesOrNo(LedgerColumn.LINED),
                cells.word(LedgerColumn.STEEL, Steel.class),
                cells.word(LedgerColumn.INSTALLATION, Installation.class),
                cells.word(LedgerColumn.RELIEF_VALVE, ReliefValve.class),
                cells.word(LedgerColumn.USE, Use.class),
                new Service(lading(cells), cells.yesOrNo(LedgerColumn.EXCLUSIVE),
                        cells.yesOrNo(LedgerColumn.CORROSION_FREE)),
                ownership(cells), cells.yesOrNo(LedgerColumn.MARKS_LEGIBLE), permit(cells),
                cells.word(LedgerColumn.EXTENDED_PERIOD, ExtendedPeriod.class), schemeDue(cells),
                outOfServiceSince(cells), collarRead(cells));
    }

    private @Nullable LocalDate outOfServiceSince(Cells cells) {
        var since = cells.day(LedgerColumn.OUT_OF_SERVICE_SINCE);
        return since != null && new Days(asOf, null).admit(cells, LedgerColumn.OUT_OF_SERVICE_SINCE, since)
                ? since
                : null;
    }

    private static @Nullable YearMonth schemeDue(Cells cells) {
        var text = cells.get(LedgerColumn.SCHEME_DUE);
        var month = Days.month(text);
        if (text != null && (month == null || isOutOfRange(month.getYear()))) {
            cells.refuse(LedgerColumn.SCHEME_DUE, "INVALID_MONTH", "a month as YYYY-MM, from 1900 to 2200");
        }
        return month;
    }

    private static boolean isOutOfRange(int year) {
        return year < 1900 || year > 2200;
    }

    private static @Nullable Permit permit(Cells cells) {
        var number = cells.text(LedgerColumn.PERMIT_NUMBER, 40);
        var expires = cells.day(LedgerColumn.PERMIT_EXPIRES);
        if (expires != null && isOutOfRange(expires.getYear())) {
            cells.refuse(LedgerColumn.PERMIT_EXPIRES, "OUT_OF_RANGE", "a day from 1900 to 2200");
        }
        var years = cells.get(LedgerColumn.PERMIT_INTERVAL_YEARS);
        var interval = years != null && years.matches("\\d{1,2}") ? Integer.valueOf(years) : null;
        if (years != null && (interval == null || interval < 1 || interval > 40)) {
            cells.refuse(LedgerColumn.PERMIT_INTERVAL_YEARS, "OUT_OF_RANGE", "1 to 40 years");
            return null;
        }
        return number == null && expires == null && interval == null ? null : new Permit(number, expires, interval);
    }

    private boolean collarRead(Cells cells) {
        return Boolean.TRUE.equals(collarReadCell(cells)) || LastTestReader.saysNone(cells)
                || blankMeansNone && cells.isBlank(LedgerColumn.LAST_TEST_MARK)
                        && cells.isBlank(LedgerColumn.LAST_TEST_MONTH) && cells.isBlank(LedgerColumn.OTHER_TESTS);
    }

    private static @Nullable Boolean collarReadCell(Cells cells) {
        var read = cells.yesOrNo(LedgerColumn.COLLAR_READ);
        if (Boolean.FALSE.equals(read) && LastTestReader.saysNone(cells)) {
            cells.refuse(LedgerColumn.COLLAR_READ, "CONTRADICTS_MARK", "yes or blank where no later mark is stamped");
        }
        return read;
    }

    private static @Nullable Lading lading(Cells cells) {
        var text = cells.get(LedgerColumn.LADING);
        if (text == null) {
            return null;
        }
        var name = Constants.name(text);
        if (Lading.isWellFormed(name)) {
            return new Lading(name);
        }
        cells.refuse(LedgerColumn.LADING, "INVALID_LADING", LADING);
        return null;
    }

    private enum Owned {
        YES,
        NO,
        UNKNOWN
    }

    private static Ownership ownership(Cells cells) {
        var owner = cells.text(LedgerColumn.OWNER, 200);
        var told = cells.word(LedgerColumn.OWNED, Owned.class);
        var consent = cells.yesOrNo(LedgerColumn.OWNER_CONSENT);
        boolean own = DISTRIBUTOR.equalsIgnoreCase(owner);
        var owned = switch (told) {
            case YES -> Boolean.TRUE;
            case NO -> Boolean.FALSE;
            case UNKNOWN -> null;
            case null -> owner == null ? null : (Boolean) own;
        };
        return owned == null && owner == null && consent == null
                ? Ownership.UNKNOWN
                : new Ownership(owned, own && Boolean.TRUE.equals(owned) ? null : owner, consent);
    }
}
