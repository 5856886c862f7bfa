package org.collarbook.custody;

import java.time.LocalDate;

import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;

/** Where the look before each fill and the leak check after it stand. */
public record FillChecks(Citation lookBefore, Citation leakCheckAfter) {

    private static final LocalDate READ_ON = LocalDate.of(2026, 11, 25);
    private static final LocalDate CFR_2015 = LocalDate.of(2015, 10, 1);

    public static final FillChecks STAND = new FillChecks(
            new Citation("49 CFR", "173.301(a)(2)", "annual edition, revised as of 2015-10-01", CFR_2015, CFR_2015,
                    "https://www.govinfo.gov/content/pkg/CFR-2015-title49-vol2/xml/CFR-2015-title49-vol2.xml",
                    READ_ON, READ_ON, Basis.TEXT),
            new Citation("NFPA 58 and common practice", "leak check after a fill", "from memory, not read", READ_ON,
                    null, "none", READ_ON, READ_ON, Basis.MEMORY));
}
