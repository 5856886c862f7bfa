package org.collarbook.registry.stamps;

import java.time.LocalDate;
import java.util.regex.Pattern;

import org.collarbook.registry.stamps.StampReader.Taken;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/**
 * The marks that take a container out of service: "a series of X's over the DOT specification number and the marked
 * pressure", or "CONDEMNED". They are looked for before anything else, and rather once too often: who reads one where
 * none is looks again, who misses one fills a condemned cylinder.
 */
final class Condemnation {

    static final Citation CITATION = new Citation("49 CFR", "180.205(i)", "annual edition, revised as of 2019-10-01",
            LocalDate.of(2015, 10, 1), LocalDate.of(2019, 10, 1),
            "https://www.govinfo.gov/content/pkg/CFR-2019-title49-vol3/xml/CFR-2019-title49-vol3.xml", LocalDate.of(
                    2026, 11, 25),
            LocalDate.of(2026, 11, 25), Basis.TEXT);
    static final String WARNING = "CONDEMNED: this container must not be filled, nor registered as serviceable; nobody"
            + " may remove the mark";

    private static final Pattern NO_LETTER = Pattern.compile("[^A-Z]");
    private static final String X = "[X\u00d7]";
    private static final Pattern ONLY_X = Pattern.compile("(?:" + X + "[ ./*-]*){3,}");
    /** In a mark such as DOT-XXXXXX or DOT-4BAXXX; a run inside a word or number of its own says nothing. */
    private static final Pattern SERIES = Pattern.compile("(?<![A-Z0-9])" + X + "{3,}(?![A-Z0-9])");
    private static final Pattern IN_A_MARK = Pattern.compile("[^ ]*" + X + "{3,}.*");
    private static final Pattern WORD = Pattern.compile("(?<![A-Z])(?:REJECT(?:ED)?|SCRAP(?:PED)?)(?![A-Z])");

    private Condemnation() {}

    /** Null where the line bears no such mark. */
    static @Nullable Taken read(StampText text) {
        var capitals = text.capitals();
        if (isCondemned(capitals)) {
            return taken(text, new Stamp.Condemned(CITATION), WARNING, isAlone(capitals));
        }
        var word = WORD.matcher(capitals);
        return word.find() && !bearsFreeText(capitals)
                ? taken(text, new Stamp.Rejected(word.group()), refusal(word.group()), word.group().equals(capitals))
                : null;
    }

    static String refusal(String word) {
        return word
                + " stands on it: do not fill it, nor register it as serviceable, before it is known who says so and"
                + " why";
    }

    /** Whether a line so written can be anything else than serial number, maker's symbol or month. */
    static boolean stands(StampText text) {
        return read(text) != null;
    }

    private static boolean isCondemned(String capitals) {
        return NO_LETTER.matcher(capitals).replaceAll("").contains("CONDEMNED") || ONLY_X.matcher(capitals).matches()
                || !bearsFreeText(capitals) && (SERIES.matcher(capitals).find()
                        || Opening.SPECIFICATION.fits(capitals) && IN_A_MARK.matcher(capitals).matches());
    }

    private static boolean isAlone(String capitals) {
        return ONLY_X.matcher(capitals).matches() || NO_LETTER.matcher(capitals).replaceAll("").equals("CONDEMNED")
                && capitals.chars().noneMatch(Character::isDigit);
    }

    private static boolean bearsFreeText(String capitals) {
        return Opening.TAG.fits(capitals) || Opening.SERIAL.fits(capitals);
    }

    private static Taken taken(StampText text, Stamp stamp, String warning, boolean alone) {
        var warnings = text.warnings();
        warnings.addFirst(warning);
        if (!alone) {
            warnings.add("what else stands on this line is not read; give it as a line of its own");
        }
        return new Taken(stamp.kind(), new Reading.Read<>(text.raw(), stamp, warnings));
    }
}
