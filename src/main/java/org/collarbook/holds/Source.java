package org.collarbook.holds;

import java.time.LocalDate;

import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;

/** Where the reasons of holds stand; editions and days as in the rules. */
final class Source {

    private static final LocalDate READ = LocalDate.of(2026, 11, 25);
    private static final LocalDate EDITION_2015 = LocalDate.of(2015, 10, 1);
    private static final LocalDate EDITION_2019 = LocalDate.of(2019, 10, 1);
    private static final LocalDate HM_233F = LocalDate.of(2017, 1, 23);

    private Source() {}

    /** Which cylinders are tested whatever the date: dents, corrosion, leakage, thermal damage; accidents; heat. */
    static Citation testWhateverTheDate() {
        return cfr2019("180.205(d)", EDITION_2015);
    }

    /** A 4-series cylinder that has lost 5 % of its tare or more. */
    static Citation tareLoss() {
        return cfr2019("180.209(c)", HM_233F);
    }

    static Citation cylinders(String section) {
        return new Citation("49 CFR", section, "annual edition, revised as of 2015-10-01", EDITION_2015, EDITION_2015,
                "https://www.govinfo.gov/content/pkg/CFR-2015-title49-vol2/xml/CFR-2015-title49-vol2.xml", READ, READ,
                Basis.TEXT);
    }

    private static Citation cfr2019(String section, LocalDate inForceFrom) {
        return new Citation("49 CFR", section, "annual edition, revised as of 2019-10-01", inForceFrom, EDITION_2019,
                "https://www.govinfo.gov/content/pkg/CFR-2019-title49-vol3/xml/CFR-2019-title49-vol3.xml", READ, READ,
                Basis.TEXT);
    }

    /** A 4E cylinder that was in a fire is out of service for good. */
    static Citation fireOnAluminium() {
        return new Citation("NFPA 58", "Annex C.3.2.2", "annex C.3.2 as copied by a marketer, edition not named",
                EDITION_2015, null, "https://www.thompsongas.com/c32requalification/", READ, READ, Basis.QUOTED);
    }

    static Citation commonPractice(String what) {
        return new Citation("common practice", what, "common practice, no source", EDITION_2015, null, "none", READ,
                READ, Basis.COMMON_PRACTICE);
    }
}
