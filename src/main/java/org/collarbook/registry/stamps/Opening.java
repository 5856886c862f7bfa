package org.collarbook.registry.stamps;

import java.util.regex.Pattern;

/** What a line sets out to be, so that an ill-written one is refused as that and not read as something else. */
enum Opening {
    TAG("\\(\\d{2,4}\\).*"),
    /** Labelled, or in a unit of volume. */
    CAPACITY("(?:W ?\\.? ?C\\.?|WATER CAP.*?)(?![A-Z]).*|\\d[\\d.]* ?[A-Z. ]*W\\.? ?C\\.?"
            + "|\\d[\\d.]* ?(?:L|LIT(?:RE|ER)S?|(?:US ?)?GAL(?:LON)?S?|USW?G)\\.?"),
    TARE("(?:T ?\\.? ?W\\.?|TARE)(?![A-Z]).*|T\\.? ?[:=]? ?\\d[\\d.,]* ?(?:LBS?|KGS?|POUNDS?|#)\\.?"),
    /** A weight that does not say of what. */
    WEIGHT("\\d[\\d.]* ?(?:LBS?|KGS?|POUNDS?|#)\\.?"),
    SERIAL("(?:S ?/ ?N|SN|SER(?:IAL)?)(?![A-Z]).*"),
    SPECIFICATION("(?:DOT|ICC|CRC|BTC|CTC|TC|UN|MC|IM|EN|ADR|API|ASME|PRESSURE)(?=[^A-Z]|$|E|SP|SU|MC|IM).*"
            + "|[\u03c0\u03a0].*|PI[ -]*(?!(?:0[1-9]|1[0-2])\\d\\d)\\d{4}"),
    DATE("(?:[A-Z]{1,3} ){0,2}(?:\\d{1,2} ?[-/.] ?[A-Z0-9].*|\\d{4} ?[-/. ] ?\\d{1,2}(?!\\d).*"
            + "|\\d{4}(?:\\d\\d)?(?: ?[A-Z?*\u2605+, ]{1,12})?)|\\d{1,2} [A-Z0-9].*"),
    WORD(".*");

    private final Pattern shape;

    Opening(String shape) {
        this.shape = Pattern.compile(shape);
    }

    static Opening of(String capitals) {
        for (var opening : values()) {
            if (opening.fits(capitals)) {
                return opening;
            }
        }
        return WORD;
    }

    boolean fits(String capitals) {
        return shape.matcher(capitals).matches();
    }
}
