package org.collarbook.registry.stamps;

import java.util.regex.Pattern;

import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/** Words with a digit that are more likely a piece of another mark than a serial number. */
enum NoSerial {
    /** ADR P200(12) 3.4. */
    PERIOD("P1[05]Y", StampKind.SPECIFICATION, "the period that ADR P200 grants, on one line behind the EN or pi mark,"
            + " such as EN 1442 P15Y"),
    /** The suffixes of 49 CFR 180.213(f) and 180.415; 25E is also the thread of a UN receptacle. */
    YEAR_AND_SUFFIX("\\d{1,2} ?(?:[SEVIKLTPR]|FS|AE|UE|VE) ?[*\u2605+]*", StampKind.REQUALIFICATION, "the month before"
            + " the year and its letter, such as 5-99E, unless it is the thread of a UN receptacle"),
    /** A to D are the quarters on LP-gas cylinders in India, where D-24 is the last of 2024. */
    LETTER_AND_YEAR("[A-Z][-/ ]\\d{2}", null, "a month such as 5-24: a letter and two digits may be a quarter and year,"
            + " as in India, or a designation");

    private final Pattern shape;
    private final @Nullable StampKind kind;
    private final String expected;

    NoSerial(String shape, @Nullable StampKind kind, String expected) {
        this.shape = Pattern.compile(shape);
        this.kind = kind;
        this.expected = expected + "; a serial number with S/N before it";
    }

    /** Null where the line is none of these. */
    static @Nullable Taken read(StampText text) {
        for (var piece : values()) {
            if (piece.shape.matcher(text.capitals()).matches()) {
                return new Taken(piece.kind, text.unreadable(0, piece.expected));
            }
        }
        return null;
    }
}
