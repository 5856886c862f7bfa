package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.exclusively;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import java.time.LocalDate;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Move;
import org.collarbook.regulation.Purpose;
import org.junit.jupiter.api.Test;

/**
 * Past its date: in the US used up when filled in time (180.205(c)), under ADR carried to be inspected (4.1.6.10), in
 * Australia used and not carried (elgas.com.au); filled nowhere.
 */
@Trap(of = Catalogue.WORLD, number = 8)
class FillCarryAndUseDifferTest {

    private static Move to(Purpose purpose) {
        return new Move(null, purpose);
    }

    @Test
    void inTheUsByTheDayOfTheFill() {
        assertThat(may(today(cylinder("DOT-4BA240", "2014-05").filledOn(LocalDate.of(2026, 5, 31))))).isEqualTo("-CU");
        assertThat(may(today(cylinder("DOT-4BA240", "2014-05").filledOn(LocalDate.of(2026, 6, 1))))).isEqualTo("---");
    }

    @Test
    void underAdrByThePurpose() {
        FactsBuilder overdue = there("ADR", cylinder("EN 1442", "2014-05")).filledOn(LocalDate.of(2020, 1, 1));
        assertThat(may(today(overdue.move(to(Purpose.TO_REQUALIFIER))))).isEqualTo("-C-");
        assertThat(may(today(overdue.move(to(Purpose.TO_SCRAP))))).isEqualTo("-C-");
        assertThat(may(today(overdue.move(to(Purpose.DELIVERY))))).isEqualTo("---");
        assertThat(may(today(overdue.move(null)))).as("no purpose told").isEqualTo("---");
    }

    @Test
    void inAustraliaItIsUsed() {
        FactsBuilder overdue = there("AU", cylinder("EN 1442", "2014-05"));
        assertThat(may(today(overdue))).isEqualTo("--U");
        assertThat(may(today(there("AU", cylinder("EN 1442", "2020-05"))))).isEqualTo("-CU");
    }

    /** PHMSA letter 13-0006 of 2013-02-06. */
    @Test
    void aPortableTankInTheUsByTheDayOfTheFill() {
        FactsBuilder portable = cylinder("DOT-51", "2021-10").kind(ContainerKind.PORTABLE_TANK)
                .service(exclusively("LPG"));
        assertThat(may(today(portable.filledOn(LocalDate.of(2026, 10, 31))))).isEqualTo("-CU");
        assertThat(may(today(portable.filledOn(LocalDate.of(2026, 11, 1))))).isEqualTo("---");
    }
}
