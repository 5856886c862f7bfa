package org.collarbook.custody.routes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Texts that somebody may send: each is refused or answered soon, whatever the library does with it. */
class HostileRulesTests {

    private static final LocalDate FROM = LocalDate.of(2026, 11, 26);

    @ParameterizedTest
    @ValueSource(strings = {"", ";", "=", "FREQ", "FREQ=", "FREQ=DAILY;;BYDAY=", "FREQ=DAILY;BYDAY=,", "BYDAY=TH",
            "FREQ=DAILY;INTERVAL=-1", "FREQ=DAILY;INTERVAL=1e3", "FREQ=DAILY;COUNT=99999999999", "\u0000",
            "\uD83D\uDE9A",
            "FREQ=MONTHLY;BYMONTHDAY=0", "FREQ=MONTHLY;BYMONTHDAY=32", "FREQ=YEARLY;BYMONTH=13",
            "FREQ=YEARLY;BYYEARDAY=367", "FREQ=DAILY;UNTIL=", "FREQ=DAILY;UNTIL=2027", "FREQ=WEEKLY;BYDAY=2TH",
            "FREQ=YEARLY;INTERVAL=2147483647", "FREQ=YEARLY;BYWEEKNO=20",
            // two readings
            "FREQ=YEARLY;BYMONTHDAY=1", "FREQ=YEARLY;BYMONTH=2,12;BYDAY=FR;BYSETPOS=1",
            "FREQ=MONTHLY;INTERVAL=2147483647;BYMONTHDAY=31"})
    void unreadableTextIsNoRule(String text) {
        assertThat(VisitRule.isRead(text)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=30, false", "FREQ=MONTHLY;INTERVAL=12;BYMONTH=3, false",
            "FREQ=WEEKLY;BYDAY=MO;BYSETPOS=2, false", "FREQ=MONTHLY;BYMONTHDAY=-31;BYMONTH=2, false",
            "FREQ=DAILY;COUNT=2000000000, true",
            // the library looks for it outside of an array
            "'FREQ=YEARLY;BYDAY=5FR,-5MO;BYYEARDAY=366,-366', false",
            "FREQ=YEARLY;INTERVAL=1000, true", "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29;BYDAY=FR, true",
            // 2036-02-29 is a Friday, but the library gives up on the way
            "FREQ=DAILY;BYMONTH=2;BYMONTHDAY=29;BYDAY=FR, false"})
    void rulesThatNeverComeTrueAreFoundOut(String rule, boolean comes) {
        assertThat(assertTimeoutPreemptively(Duration.ofSeconds(60), () -> new VisitRule(rule).comesTrueFrom(FROM)))
                .isEqualTo(comes);
    }

    @Test
    void theFirstDayMayBeAnyThatIsAccepted() {
        for (var from : List.of(VisitRule.EARLIEST, FROM, VisitRule.LATEST)) {
            var pattern = new VisitPattern(new VisitRule("FREQ=DAILY;COUNT=2000000000"), from, true,
                    new java.util.TreeMap<>(), new java.util.TreeMap<>(), new java.util.TreeMap<>());
            assertThat(pattern.next(from.minusDays(1))).contains(from);
            assertThat(pattern.previous(LocalDate.MAX)).contains(VisitRule.LATEST);
            assertThat(pattern.isVisit(VisitRule.LATEST)).isTrue();
        }
    }

    /** Parts of rules thrown together: most are read, many make no sense. */
    @Test
    void anyMixtureOfPartsIsAnsweredSoon() {
        long seed = 20_261_125;
        var random = new SplittableRandom(seed);
        int read = 0;
        for (int i = 0; i < 1500; i++) {
            var text = mixture(random);
            if (VisitRule.isRead(text)) {
                read++;
                assertTimeoutPreemptively(Duration.ofSeconds(60), () -> {
                    var rule = new VisitRule(text);
                    rule.comesTrueFrom(FROM);
                    rule.after(FROM, LocalDate.of(2050, 1, 1)).hasNext();
                }, text + ", seed " + seed);
            }
        }
        assertThat(read).isGreaterThan(500);
    }

    private static String mixture(SplittableRandom random) {
        var text = new StringBuilder("FREQ=").append(any(random, "DAILY", "WEEKLY", "MONTHLY", "YEARLY"));
        for (var part : List.of("INTERVAL=999", "INTERVAL=7", "BYMONTH=2", "BYMONTH=1,2,3,4,5,6,7,8,9,10,11,12",
                "BYMONTHDAY=29,30,31", "BYMONTHDAY=-31", "BYDAY=MO,TU,WE,TH,FR,SA,SU", "BYDAY=5FR,-5MO",
                "BYYEARDAY=366,-366", "BYWEEKNO=53", "BYSETPOS=-1", "BYSETPOS=366", "COUNT=2000000000",
                "UNTIL=21991231", "WKST=SU")) {
            if (random.nextInt(6) == 0) {
                text.append(';').append(part);
            }
        }
        return text.toString();
    }

    private static String any(SplittableRandom random, String... words) {
        return words[random.nextInt(words.length)];
    }
}
