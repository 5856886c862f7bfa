package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.clock;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.LocalDate;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** TC alone, CRC, BTC and CTC, special permits and UN marks are of other tables: 49 CFR 180.205(c), 180.207(c). */
@Trap(of = Catalogue.US, number = 11)
class OtherMarksOtherTablesTest {

    @Test
    void tcAloneIsTransportCanadas() {
        var canadian = today(cylinder("TC-4BAM17", "2020-01"));
        assertThat(clock(canadian, Requirement.SHELL).outcome()).isEqualTo(new Outcome.OtherAuthority(
                "Transport Canada"));
        assertThat(may(canadian)).isEqualTo("---");
        assertThat(due(today(cylinder("DOT-4BA240/TC-4BAM17", "2020-01")))).isEqualTo("2032-01");
    }

    @ParameterizedTest
    @ValueSource(strings = {"CRC-4BA240", "BTC-4BA240", "CTC-4BA240"})
    void theOldCanadianMarksHaveTheBasePeriod(String stamp) {
        assertThat(due(today(cylinder(stamp, "2020-01")))).isEqualTo("2025-01");
    }

    /** Some composites lost their permits in 2013 (from memory): an expired permit gives no date and allows nothing. */
    @Test
    void aPermitGivesItsOwnPeriodUntilItExpires() {
        FactsBuilder composite = cylinder("DOT-SP12345", "2023-05")
                .permit(new Permit("SP12345", LocalDate.of(2026, 11, 25), 5));
        assertThat(due(on("2026-11-25", composite))).isEqualTo("2028-05");
        var expired = on("2026-11-26", composite);
        assertThat(expired.status()).isEqualTo(Status.OTHER_AUTHORITY);
        assertThat(may(expired)).isEqualTo("---");
        assertThat(due(today(cylinder("DOT-SP12345", "2023-05")))).isEqualTo("OTHER_AUTHORITY");
    }

    @Test
    void unHasTenYearsAndCompositesFive() {
        assertThat(due(today(cylinder("UN ISO 4706", "2020-01")))).isEqualTo("2030-01");
        assertThat(due(today(cylinder("UN ISO 11119-3", "2020-01")))).isEqualTo("2025-01");
    }
}
