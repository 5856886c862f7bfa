package org.collarbook.regulation;

import org.jspecify.annotations.Nullable;

/** Which number of a date stands first; the scheme under which the container is marked decides. */
enum DateOrder {
    /** 49 CFR 178.35(f) and 180.213(d). */
    MONTH_FIRST,
    /** UN Model Regulations 6.2.2.7.7(c), which ADR takes over. */
    YEAR_FIRST,
    EITHER;

    /** {@code american}: something beside the date is written as 49 CFR 180.213 has it, whatever the container. */
    static DateOrder of(@Nullable Specification specification, DateStamp date, boolean american) {
        if (date.rin() != null) {
            return MONTH_FIRST;
        }
        if (specification == null) {
            return american || date.lettersBetween() ? MONTH_FIRST : EITHER;
        }
        return switch (specification.authority()) {
            case DOT, ICC, CRC, BTC, CTC, TC, SPECIAL_PERMIT, ASME -> MONTH_FIRST;
            case UN, ADR -> american || date.lettersBetween() ? EITHER : YEAR_FIRST;
        };
    }
}
