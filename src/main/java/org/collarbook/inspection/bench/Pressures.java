package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.util.List;

/** The pressures of a test: high enough to be one, and no higher at a repeat than a repeat allows. */
record Pressures(Marked marked, TestSheet sheet, Refusals refusals) {

    void check(List<Remark> remarks) {
        var test = sheet.testPressurePsig();
        if (test == null) {
            return;
        }
        if (sheet.isPressureTest()) {
            refuseTooLow(test, remarks);
        }
        refuseTooHighAtRepeat(test, remarks);
    }

    private void refuseTooLow(int test, List<Remark> remarks) {
        var family = marked.dotFamily();
        var service = sheet.markedPressurePsig();
        var minimum = family == null || service == null ? null : MinimumTestPressure.of(family, service);
        if (minimum == null || service == null) {
            remarks.add(new Remark(Remark.Code.TEST_PRESSURE_NOT_CHECKED, "No minimum test pressure is held for "
                    + marked.specification() + ": compare it with what governs it.",
                    marked.isCylinder() ? Sources.TABLE_1 : null));
            return;
        }
        var asked = minimum.stripTrailingZeros().toPlainString() + " psig, "
                + MinimumTestPressure.words(family, service);
        if (!MinimumTestPressure.isReached(minimum, test)) {
            refusals.refuse("/testPressurePsig", "TEST_PRESSURE_TOO_LOW", test,
                    "at least " + asked + "; below it the cylinder was not tested", Sources.TABLE_1);
        } else {
            remarks.add(new Remark(Remark.Code.TEST_PRESSURE_SUFFICES, "The test pressure of " + test
                    + " psig is not below " + asked + ".", Sources.TABLE_1));
        }
    }

    private void refuseTooHighAtRepeat(int test, List<Remark> remarks) {
        if (sheet.repeats().isEmpty()) {
            return;
        }
        int first = sheet.repeats().getFirst().testPressurePsig();
        for (int i = 1; i < sheet.repeats().size(); i++) {
            compare("/repeats/" + i + "/testPressurePsig", sheet.repeats().get(i).testPressurePsig(), first);
        }
        compare("/testPressurePsig", test, first);
        remarks.add(new Remark(Remark.Code.TEST_REPEATED, "The apparatus failed " + sheet.repeats().size()
                + (sheet.repeats().size() == 1 ? " time" : " times") + " before; the first attempt was at " + first
                + " psig.", Sources.REPEATED_TEST));
    }

    private void compare(String pointer, int repeated, int first) {
        var most = TestArithmetic.mostAtRepeat(first);
        if (most.compareTo(BigDecimal.valueOf(repeated)) < 0) {
            refusals.refuse(pointer, "REPEAT_PRESSURE_TOO_HIGH", repeated, "at most "
                    + most.stripTrailingZeros().toPlainString() + " psig: 10 % or 100 psi above the first attempt at "
                    + first + " psig, whichever is less", Sources.REPEATED_TEST);
        }
    }
}
