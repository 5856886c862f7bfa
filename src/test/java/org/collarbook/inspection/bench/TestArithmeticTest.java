package org.collarbook.inspection.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Random;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TestArithmeticTest {

    private static final long SEED = 20261125L;
    private static final int ROUNDS = 20_000;

    private static Expansion measured(String total, String permanent) {
        return new Expansion(new BigDecimal(total), new BigDecimal(permanent));
    }

    /** 49 CFR 180.205(i), edition of 2019: "exceeds 10 percent", of a 4E "12 percent"; at the limit nothing is exceeded. */
    @ParameterizedTest
    @CsvSource({"100, 10, 10, false, 10.00", "100, 10.01, 10, true, 10.01", "100, 9.99, 10, false, 9.99",
            "100, 10.001, 10, true, 10.01", "100, 12, 12, false, 12.00", "100, 12.01, 12, true, 12.01",
            "100, 12, 10, true, 12.00", "63.2, 1.1, 10, false, 1.75", "200.5, 20.05, 10, false, 10.00",
            "200.5, 20.051, 10, true, 10.01", "9999999.999, 0, 10, false, 0.00", "0.001, 0.001, 10, true, 100.00"})
    void permanentExpansionIsJudgedOnTheExactRatio(String total, String permanent, BigDecimal limit, boolean over,
            String shown) {
        var expansion = measured(total, permanent);
        assertThat(TestArithmetic.exceeds(expansion, limit)).isEqualTo(over);
        assertThat(TestArithmetic.permanentPercent(expansion).toPlainString()).isEqualTo(shown);
    }

    /** 49 CFR 180.205(g): "10 percent or 100 psig, whichever is less". 1,000 psig is where the two meet. */
    @ParameterizedTest
    @CsvSource({"480, 528", "485, 533.5", "999, 1098.9", "1000, 1100", "1001, 1101", "3000, 3100", "1, 1.1"})
    void aRepeatIsAtMostSoMuchHigher(int first, BigDecimal most) {
        assertThat(TestArithmetic.mostAtRepeat(first)).isEqualByComparingTo(most);
    }

    /** 49 CFR 180.209(c): "has lost 5 percent or more": at five it has. */
    @ParameterizedTest
    @CsvSource({"20, 19, true, 5.00", "20, 19.001, false, 4.99", "20, 18.999, true, 5.00", "17.0, 16.15, true, 5.00",
            "17.0, 16.151, false, 4.99", "17.0, 17.0, false, 0.00", "17.0, 17.2, false, -1.18"})
    void tareLossCountsFromFivePercent(BigDecimal stamped, BigDecimal weighed, boolean demanded, String shown) {
        assertThat(TestArithmetic.demandsRequalification(stamped, weighed)).isEqualTo(demanded);
        assertThat(TestArithmetic.tareLossPercent(stamped, weighed).toPlainString()).isEqualTo(shown);
    }

    /** 49 CFR 180.209(a) Table 1, as read in the edition of 2019 and after 85 FR 85380: 5/3 or 2 times service pressure, DOT 3 a flat 3,000. */
    @ParameterizedTest
    @CsvSource({"4BA, 240, 480, 479", "4BW, 240, 480, 479", "4B, 300, 600, 599", "4E, 240, 480, 479",
            "4B240ET, 240, 480, 479", "4AA480, 480, 960, 959", "3B, 400, 800, 799", "3A, 1800, 3000, 2999",
            "3AA, 2015, 3359, 3358", "3AL, 1800, 3000, 2999", "3HT, 1850, 3084, 3083", "3, 1800, 3000, 2999"})
    void theTableGivesTheLeastPressureOfATest(String family, int service, int enough, int tooLow) {
        var minimum = MinimumTestPressure.of(family, service);
        assertThat(minimum).isNotNull();
        assertThat(MinimumTestPressure.isReached(minimum, enough)).isTrue();
        assertThat(MinimumTestPressure.isReached(minimum, tooLow)).isFalse();
    }

    /** The same table: "not required" for 3E and 4L, none for the 8 series; special permits say their own. */
    @ParameterizedTest
    @CsvSource({"3E", "4L", "8", "8AL", "SP", "UN", "4BAM17"})
    void whereTheTableGivesNoneNoneIsMadeUp(String family) {
        assertThat(MinimumTestPressure.of(family, 240)).isNull();
    }

    @Test
    void theShownPercentNeverContradictsTheDecision() {
        var random = new Random(SEED);
        for (int i = 0; i < ROUNDS; i++) {
            var total = new BigDecimal(BigInteger.valueOf(1 + random.nextInt(500_000)), 3);
            // close to a limit, where it matters
            var limit = random.nextBoolean() ? TestArithmetic.MOST_PERMANENT : TestArithmetic.MOST_PERMANENT_OF_4E;
            var permanent = total.multiply(limit).movePointLeft(2).setScale(3, RoundingMode.HALF_UP)
                    .add(new BigDecimal(BigInteger.valueOf(random.nextInt(5) - 2), 3)).max(BigDecimal.ZERO).min(total);
            var expansion = new Expansion(total, permanent);
            var shown = TestArithmetic.permanentPercent(expansion);
            assertThat(TestArithmetic.exceeds(expansion, limit)).as("seed %s round %s: %s", SEED, i, expansion)
                    .isEqualTo(shown.compareTo(limit) > 0);
            // the unit cancels out: cubic inches give the same answer, 16.387064 cm3 each by definition
            var inch = new BigDecimal("16.387064");
            assertThat(TestArithmetic.exceeds(new Expansion(total.multiply(inch), permanent.multiply(inch)), limit))
                    .isEqualTo(TestArithmetic.exceeds(expansion, limit));
            assertThat(expansion.elastic().add(permanent)).isEqualByComparingTo(total);
        }
    }

    @Test
    void theShownTareLossNeverContradictsTheDecision() {
        var random = new Random(SEED);
        for (int i = 0; i < ROUNDS; i++) {
            var stamped = new BigDecimal(BigInteger.valueOf(1000 + random.nextInt(300_000)), 3);
            var weighed = stamped.multiply(new BigDecimal("0.95")).setScale(3, RoundingMode.HALF_UP)
                    .add(new BigDecimal(BigInteger.valueOf(random.nextInt(5) - 2), 3));
            assertThat(TestArithmetic.demandsRequalification(stamped, weighed))
                    .as("seed %s round %s: %s of %s lb", SEED, i, weighed, stamped)
                    .isEqualTo(TestArithmetic.tareLossPercent(stamped, weighed)
                            .compareTo(TestArithmetic.TARE_LOSS) >= 0);
        }
    }

    @Test
    void aRepeatNeverGoesHigherThanEitherBound() {
        for (int first = 1; first <= 20_000; first++) {
            var most = TestArithmetic.mostAtRepeat(first);
            assertThat(most).isLessThanOrEqualTo(BigDecimal.valueOf(first + 100L));
            assertThat(most.multiply(BigDecimal.TEN)).isLessThanOrEqualTo(BigDecimal.valueOf(first * 11L));
            assertThat(most).isGreaterThan(BigDecimal.valueOf(first));
        }
    }

    @Test
    void anExpansionThatCannotBeIsNone() {
        for (var wrong : new String[][]{{"0", "0"}, {"-1", "0"}, {"10", "-0.1"}, {"10", "10.1"}}) {
            assertThatThrownBy(() -> measured(wrong[0], wrong[1])).isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("cm3");
        }
    }
}
