package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.notHeld;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.undetermined;

import java.time.LocalDate;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReasonCode;
import org.junit.jupiter.api.Test;

/** A certificate ends on a day and names who may use it: SU 10054 (Ren. 4) ended on 2022-01-31, SU 5931 on 2016-11-30. */
@Trap(of = Catalogue.WORLD, number = 13)
class PermitsExpireAndNameAHolderTest {

    private static FactsBuilder canadian(String stamp, Permit permit) {
        return cylinder(stamp, "2016-04").jurisdiction(new Jurisdiction("CA")).permit(permit);
    }

    @Test
    void theLongerPeriodEndsWithTheCertificate() {
        var certified = canadian("TC-3AAM165", new Permit("SU 10054", LocalDate.of(2022, 1, 31), 10));
        assertThat(due(on("2022-01-31", certified))).isEqualTo("2026-04");
        assertThat(due(on("2022-02-01", certified))).isEqualTo("UNDETERMINED");
        assertThat(may(on("2022-02-01", certified))).isEqualTo("---");
    }

    @Test
    void aCylinderMadeUnderOneIsNothingWithoutIt() {
        var composite = canadian("TC-SU5931", new Permit("SU 5931", LocalDate.of(2016, 11, 30), 5));
        assertThat(undetermined(on("2017-01-01", composite))).containsExactly(ReasonCode.MISSING_PERMIT);
        var halfTold = canadian("TC-SU5931", new Permit("SU 5931", null, 5));
        assertThat(undetermined(on("2018-12-01", halfTold))).containsExactly(ReasonCode.MISSING_PERMIT);
        assertThat(may(on("2018-12-01", halfTold))).isEqualTo("---");
    }

    /** Who holds it is no fact here: it is told so, and no fill is allowed by a certificate or a special permit. */
    @Test
    void theHolderIsNotHeld() {
        assertThat(notHeld("CA", "certificate", "holder")).isTrue();
        assertThat(notHeld("US", "special permit", "holder")).isTrue();
        var permitted = cylinder("DOT-SP12345", "2024-04")
                .permit(new Permit("SP12345", LocalDate.of(2030, 1, 31), 5));
        assertThat(due(on("2026-11-25", permitted))).isEqualTo("2029-04");
        assertThat(on("2026-11-25", permitted).mayFill().allowed()).isFalse();
        var certified = canadian("TC-3AAM165", new Permit("SU 10054", LocalDate.of(2022, 1, 31), 10));
        assertThat(on("2022-01-31", certified).mayFill().allowed()).isFalse();
    }

    /** The number of the special permit is stamped: another one's says nothing of this cylinder. */
    @Test
    void anotherPermitDoesNotCount() {
        var others = cylinder("DOT-SP12345", "2024-04").permit(new Permit("SP99999", LocalDate.of(2030, 1, 31), 5));
        assertThat(due(on("2026-11-25", others))).isEqualTo("OTHER_AUTHORITY");
        assertThat(may(on("2026-11-25", others))).isEqualTo("---");
    }
}
