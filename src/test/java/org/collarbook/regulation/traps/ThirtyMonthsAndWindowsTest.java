package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.YearMonth;
import java.util.Set;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.junit.jupiter.api.Test;

/**
 * Two and a half years are thirty months, 49 CFR 180.605(c)(1); "12 to 18 months" is a window whose end is the date,
 * NFPA 58 (2011) 6.6.6.1(K) as a third party quotes it.
 */
@Trap(of = Catalogue.WORLD, number = 11)
class ThirtyMonthsAndWindowsTest {

    @Test
    void thirtyMonthsAreNotTwoYearsNorThree() {
        FactsBuilder portable = marked(cylinder("UN T50", "2019-05").kind(ContainerKind.PORTABLE_TANK), "2024-05",
                Method.PERIODIC);
        assertThat(due(today(portable), Requirement.INTERMEDIATE_TEST)).isEqualTo("2026-11");
        assertThat(on("2026-11-30", portable).mayCarry().allowed()).isTrue();
        assertThat(on("2026-12-01", portable).mayCarry().allowed()).isFalse();
    }

    private static FactsBuilder buried() {
        return Cases.stationary().installation(Installation.UNDERGROUND).manufactured(YearMonth.of(2025, 6))
                .enable(Set.of("us.nfpa58.cathodic-protection"));
    }

    @Test
    void theWindowEndsAfterEighteenMonths() {
        assertThat(due(today(buried()), Requirement.CATHODIC_PROTECTION)).isEqualTo("2026-12");
        assertThat(on("2026-12-31", buried()).mayFill().allowed()).isTrue();
        assertThat(on("2027-01-01", buried()).mayFill().allowed()).isFalse();
        assertThat(due(today(marked(buried(), "2026-08", Method.PROTECTION_TESTED)),
                Requirement.CATHODIC_PROTECTION)).as("36 months after a test").isEqualTo("2029-08");
    }
}
