package org.collarbook.inspection.bench;

import static org.collarbook.regulation.Requalification.LAST_WITHOUT_RIN;

import java.time.LocalDate;
import java.time.YearMonth;

import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/** Judges a record: refuses what cannot be, and computes the result of what remains. */
public final class Judge {

    private final Marked marked;
    private final TestSheet sheet;
    private final Refusals refusals;

    private Judge(Marked marked, TestSheet sheet, Refusals refusals) {
        this.marked = marked;
        this.sheet = sheet;
        this.refusals = refusals;
    }

    /**
     * Null when something was refused.
     *
     * @param lossStands an earlier record tells of lost tare, and no pressure test was passed since
     */
    public static @Nullable Judgement judge(Marked marked, TestSheet sheet, boolean lossStands, LocalDate today,
            Refusals refusals) {
        var judge = new Judge(marked, sheet, refusals);
        refuseWrongDay(sheet.performedOn(), marked, today, refusals);
        judge.refuseWrongMethod();
        judge.refuseWrongMarks();
        judge.refuseWrongGrounds();
        var reckoning = new Reckoning(marked, sheet, lossStands, refusals);
        new Pressures(marked, sheet, refusals).check(reckoning.remarks());
        return refusals.areAny() ? null : reckoning.judgement();
    }

    /** A month alone is known of the original test. */
    public static void refuseWrongDay(LocalDate day, Marked marked, LocalDate today, Refusals refusals) {
        if (day.isAfter(today)) {
            refusals.refuse("/performedOn", "IN_THE_FUTURE", day,
                    "a day not after " + today + ", the date where the container stands");
        }
        var manufactured = marked.manufactured();
        if (manufactured != null && YearMonth.from(day).isBefore(manufactured)) {
            refusals.refuse("/performedOn", "BEFORE_MANUFACTURE", day,
                    "not before the original test in " + manufactured);
        }
    }

    private void refuseWrongMethod() {
        var contents = Contents.of(sheet.method());
        if (!contents.kinds().contains(marked.kind())) {
            refusals.refuse("/method", "NOT_FOR_THIS_KIND", sheet.method(),
                    "on a " + marked.kind() + " another method: this one is for " + contents.kindsInWords(),
                    contents.source());
        }
        if (sheet.rin() == null && sheet.method().isOfCylinder() && marked.isCylinder()
                && sheet.month().isAfter(LAST_WITHOUT_RIN)) {
            refusals.refuse("/requalifier", "MISSING", null, "the RIN of the facility, required after "
                    + LAST_WITHOUT_RIN, Sources.RIN_MARK);
        }
    }

    private void refuseWrongMarks() {
        var family = marked.dotFamily();
        boolean volumetric = sheet.method() == Method.VOLUMETRIC_EXPANSION;
        if (sheet.star() && !(volumetric && (marked.isOf("3A") || marked.isOf("3AA")))) {
            refusals.refuse("/star", "NOT_ALLOWED", "true", "a star only after a volumetric test of a DOT-3A or 3AA",
                    Sources.STAR);
        }
        if (sheet.plus() && !(volumetric && family != null && family.startsWith("3"))) {
            refusals.refuse("/plus", "NOT_ALLOWED", "true", "a plus only after a volumetric test of the DOT-3 series",
                    Sources.PLUS);
        }
        if (sheet.markedPressurePsig() != null && marked.servicePsig() != null
                && !marked.servicePsig().equals(sheet.markedPressurePsig())) {
            refusals.refuse("/markedPressurePsig", "DIFFERS_FROM_REGISTER", sheet.markedPressurePsig(),
                    marked.servicePsig() + " as the register has it; correct the register first if the mark says"
                            + " otherwise",
                    marked.isCylinder() ? Sources.RECORD : null);
        }
    }

    private void refuseWrongGrounds() {
        for (int i = 0; i < sheet.grounds().size(); i++) {
            var ground = sheet.grounds().get(i);
            var possible = marked.isCylinder() && !Contents.isOfPart(sheet.method())
                    && switch (ground) {
                        case CGA_CRITERIA, LEAK_THROUGH_WALL, WEAKENING_CRACKS, SERVICE_LIFE_EXPIRED -> true;
                        case ELASTIC_EXPANSION_OF_3HT, DENT_OR_BULGE_OF_3HT -> marked.isOf("3HT");
                        case OVERHEATED_ALUMINIUM, SPECIAL_PERMIT_LIMIT -> marked.isUnderPermit();
                    };
            if (!possible) {
                refusals.refuse("/grounds/" + i, "NOT_FOR_THIS_SPECIFICATION", ground,
                        "a ground on which a " + marked.specification() + " is condemned", Sources.CONDEMNATION);
            }
        }
    }
}
