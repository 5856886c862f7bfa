package org.collarbook.portal.notices;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** How long beforehand a due month is told: so many months before it, or so many days before its last day. */
record Lead(int count, Unit unit) {

    enum Unit {
        DAYS(730),
        MONTHS(24);

        private final int most;

        Unit(int most) {
            this.most = most;
        }
    }

    /** As asked for. */
    @Schema(name = "NoticeLead")
    record Asked(@Nullable Integer days, @Nullable Integer months) {

        @Nullable
        Lead read(Inputs wrong) {
            if ((days == null) == (months == null)) {
                wrong.refuse("/lead", days == null ? "MISSING" : "TOLD_TWICE", null, "either days or months");
                return null;
            }
            return days == null
                    ? lead("/lead/months", months, Unit.MONTHS, wrong)
                    : lead("/lead/days", days, Unit.DAYS, wrong);
        }

        private static @Nullable Lead lead(String pointer, @Nullable Integer count, Unit unit, Inputs wrong) {
            if (count == null || count < 0 || count > unit.most) {
                wrong.refuse(pointer, "OUT_OF_RANGE", String.valueOf(count), "0 to " + unit.most);
                return null;
            }
            return new Lead(count, unit);
        }
    }

    Asked shown() {
        return switch (unit) {
            case DAYS -> new Asked(count, null);
            case MONTHS -> new Asked(null, count);
        };
    }
}
