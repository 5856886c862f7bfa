package org.collarbook.intake;

import java.util.Locale;

import org.collarbook.registry.Declaration;
import org.collarbook.registry.Ownership;
import org.collarbook.registry.Particulars;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

/** What a row says of a container beside its marks; what a declaration adds is added later. */
final class ParticularsReader {

    private static final String DISTRIBUTOR = "distributor";

    private final boolean blankMeansNone;

    ParticularsReader(@Nullable Declaration said) {
        blankMeansNone = said != null && Boolean.TRUE.equals(said.blankMeansNone());
    }

    Particulars read(Cells cells) {
        return new Particulars(cells.yesOrNo(LedgerColumn.COATED), null, null,
                cells.word(LedgerColumn.INSTALLATION, Installation.class), null,
                cells.word(LedgerColumn.USE, Use.class),
                new Service(lading(cells), cells.yesOrNo(LedgerColumn.EXCLUSIVE),
                        cells.yesOrNo(LedgerColumn.CORROSION_FREE)),
                ownership(cells.text(LedgerColumn.OWNER, 200)), cells.yesOrNo(LedgerColumn.MARKS_LEGIBLE), null,
                null, null, null, collarRead(cells));
    }

    private boolean collarRead(Cells cells) {
        return LastTestReader.saysNone(cells) || blankMeansNone && cells.isBlank(LedgerColumn.LAST_TEST_MARK)
                && cells.isBlank(LedgerColumn.LAST_TEST_MONTH);
    }

    private static @Nullable Lading lading(Cells cells) {
        var text = cells.get(LedgerColumn.LADING);
        if (text == null) {
            return null;
        }
        var name = text.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
        if (Lading.isWellFormed(name)) {
            return new Lading(name);
        }
        cells.refuse(LedgerColumn.LADING, "INVALID_LADING", "a name such as LPG or ANHYDROUS_AMMONIA");
        return null;
    }

    private static Ownership ownership(@Nullable String owner) {
        if (owner == null) {
            return Ownership.UNKNOWN;
        }
        return owner.equalsIgnoreCase(DISTRIBUTOR)
                ? new Ownership(true, null, null)
                : new Ownership(false, owner, null);
    }
}
