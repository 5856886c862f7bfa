package org.collarbook.regulation;

/** Under whose name a specification was stamped. */
public enum Authority {
    DOT("DOT"),
    /** The Interstate Commerce Commission, whose marks the DOT took over; 49 CFR 171.14 as remembered. */
    ICC("ICC"),
    CRC("CRC"),
    BTC("BTC"),
    CTC("CTC"),
    TC("TC"),
    UN("UN"),
    ASME("ASME"),
    /** The European agreement on carriage by road and the directive behind the pi mark. */
    ADR("ADR"),
    /** A DOT special permit (DOT-SP), once called an exemption (DOT-E). */
    SPECIAL_PERMIT("DOT");

    private final String prefix;

    Authority(String prefix) {
        this.prefix = prefix;
    }

    public String prefix() {
        return prefix;
    }
}
