package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.today;

import java.math.BigDecimal;
import java.time.YearMonth;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Move;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An ASME tank has no date, the 420 lb DOT cylinder beside it has one; a small ASME travels filled: 173.315(j)(3). */
@Trap(of = Catalogue.US, number = 12)
class AsmeDoesNotExpireTest {

    private static FactsBuilder tank(String capacity, int percentFull) {
        return Cases.stationary().manufactured(YearMonth.of(1998, 6)).waterCapacity(WaterCapacity.parse(capacity))
                .move(new Move(new BigDecimal(percentFull), Purpose.DELIVERY));
    }

    @Test
    void theTankHasNoDateAndTheCylinderBesideItHas() {
        assertThat(today(tank("120 gal", 80)).status()).isEqualTo(Status.NOT_REQUIRED);
        assertThat(today(tank("120 gal", 80)).mayFill().allowed()).isTrue();
        var cylinder = today(cylinder("DOT-4BW240", "1998-06").waterCapacity(WaterCapacity.pounds("1000")));
        assertThat(due(cylinder)).isEqualTo("2010-06");
        assertThat(may(cylinder)).isEqualTo("---");
    }

    /** Under 1,042 lb of water, which 125 gallons are; 500 gallons half full stay where they are. */
    @ParameterizedTest
    @CsvSource({"125 gal,80,true", "1041.9 lb,80,true", "1042 lb,80,false", "500 gal,50,false", "500 gal,5,true",
            "500 gal,6,false"})
    void onlyASmallOneTravelsFilled(String capacity, int percentFull, boolean travels) {
        var assessment = today(tank(capacity, percentFull));
        assertThat(assessment.mayCarry().allowed()).isEqualTo(travels);
        assertThat(assessment.mayCarry().refusedFor(ReasonCode.NOT_TO_BE_MOVED)).isEqualTo(!travels);
    }
}
