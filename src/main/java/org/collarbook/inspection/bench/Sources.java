package org.collarbook.inspection.bench;

import java.time.LocalDate;

import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;

/**
 * Where the checks of a record stand. Paragraphs of 180.205 are those of the edition that was read: since 2021-01-27 (85
 * FR 85380) rejection is (i) and condemnation (j), and that text was not read.
 */
public final class Sources {

    private static final LocalDate READ_ON = LocalDate.of(2026, 11, 25);
    private static final LocalDate CFR_2019 = LocalDate.of(2019, 10, 1);

    public static final Citation APPROVAL = cfr("180.205(b)");
    public static final Citation PRESSURE_TEST = cfr("180.205(g)");
    public static final Citation REPEATED_TEST = cfr("180.205(g)(5)");
    public static final Citation REJECTION = cfr("180.205(h)");
    public static final Citation CONDEMNATION = cfr("180.205(i)");
    public static final Citation CONDEMNED_FOR_GOOD = cfr("180.203; 180.205(i)");
    public static final Citation TABLE_1 = cfr("180.209(a) Table 1");
    public static final Citation STAR = cfr("180.209(b)");
    public static final Citation TARE_LOSS = cfr("180.209(c)");
    public static final Citation VISUAL = cfr("180.209(g)");
    public static final Citation REPAIR = cfr("180.211");
    public static final Citation RIN_MARK = cfr("180.213(d); 180.209(g)");
    public static final Citation PLUS = cfr("180.213(f)");
    public static final Citation RECORD = cfr("180.215(b)");
    public static final Citation REPAIR_RECORD = cfr("180.215");
    public static final Citation TANK_RECORD = cfr("180.417(b)");
    public static final Citation PROOF_TEST = letter("21-0100");
    public static final Citation VISUAL_RECORD = letter("21-0101");
    /** Copied by a marketer; informative in the code itself. Since when it stands there is not known. */
    public static final Citation ALUMINIUM_IN_FIRE = new Citation("NFPA 58", "Annex C.3.2.2",
            "copy without a date, thompsongas.com", READ_ON, null, "https://thompsongas.com/c32requalification/",
            READ_ON, READ_ON, Basis.SECONDARY);

    private Sources() {}

    private static Citation cfr(String section) {
        return new Citation("49 CFR", section, "annual edition, revised as of 2019-10-01", CFR_2019, CFR_2019,
                "https://www.govinfo.gov/content/pkg/CFR-2019-title49-vol3/xml/CFR-2019-title49-vol3.xml", READ_ON,
                READ_ON, Basis.TEXT);
    }

    /** The opening was read; its number tells the year alone. */
    private static Citation letter(String number) {
        return new Citation("PHMSA letter " + number, "180.215(b)", "as published", LocalDate.of(2021, 1, 1), null,
                "https://www.phmsa.dot.gov/regulations/title49/interp/" + number, READ_ON, READ_ON, Basis.QUOTED);
    }

    /** As it is named in a sentence. */
    public static String named(Citation citation) {
        return citation.instrument() + " " + citation.section();
    }
}
