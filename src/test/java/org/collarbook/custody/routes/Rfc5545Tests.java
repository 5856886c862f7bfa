package org.collarbook.custody.routes;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import net.fortuna.ical4j.model.Recur;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The days of rules, which lib-recur makes, against two others: {@code net.fortuna.ical4j.model.Recur} of ical4j 4.2.0,
 * and the table of RFC 5545 itself.
 */
class Rfc5545Tests {

    private static final long SEED = 20_261_125;
    private static final LocalDate LAST = LocalDate.of(2034, 12, 31);

    private static List<LocalDate> ours(String rule, LocalDate from, LocalDate first, LocalDate last) {
        return new VisitPattern(new VisitRule(rule), from, true, new TreeMap<>(), new TreeMap<>(), new TreeMap<>())
                .between(first, last);
    }

    private static LocalDate from(SplittableRandom random) {
        return LocalDate.of(2025, 1, 1).plusDays(random.nextInt(1200));
    }

    @Test
    void randomRulesComeOutAsTheTableOfTheRfcSays() {
        var random = new SplittableRandom(SEED);
        int some = 0;
        for (int i = 0; i < 4000; i++) {
            var rule = rule(random);
            var from = from(random);
            var first = from.plusDays(random.nextInt(900));
            if (!VisitRule.isRead(rule) || !new VisitRule(rule).comesTrueFrom(from)) {
                continue;
            }
            var byTable = new ByTheTable(rule, from).until(LAST).stream().filter(day -> !day.isBefore(first)).toList();
            assertThat(ours(rule, from, first, LAST)).as(rule + " from " + from + " after " + first + ", seed " + SEED)
                    .isEqualTo(byTable);
            some += byTable.isEmpty() ? 0 : 1;
        }
        assertThat(some).isGreaterThan(1500);
    }

    /**
     * Where ical4j 4.2.0 departs from the RFC, as the cases below show: days of a month in a DAILY rule (negative ones, and it gives up where they are rare);
     * numbered weekdays beside days of a month; a day that is named twice, such as the third Saturday and the last but one; weeks that do not begin as WKST
     * says; months in a WEEKLY rule; days of a year beside anything; COUNT of positions that are one, such as 1 and -1.
     */
    private static final Pattern ICAL4J_DIFFERS = Pattern.compile("FREQ=DAILY.*BYMONTHDAY=.*"
            + "|.*BYMONTHDAY=.*BYDAY=[^;]*\\d.*|FREQ=(MONTHLY|YEARLY).*BYMONTHDAY=[^;]*-.*|FREQ=WEEKLY;.*(INTERVAL|BYMONTH"
            + "|BYSETPOS).*|.*BYYEARDAY.*|.*BYSETPOS.*COUNT.*|.*BYDAY=[^;]*\\d.*(BYSETPOS|COUNT).*");

    @Test
    void randomRulesComeOutAsIcal4jHasThem() {
        var random = new SplittableRandom(SEED + 1);
        int compared = 0;
        for (int i = 0; i < 6000; i++) {
            var rule = rule(random);
            var from = from(random);
            if (!VisitRule.isRead(rule) || ICAL4J_DIFFERS.matcher(rule).matches()
                    || !new VisitRule(rule).comesTrueFrom(from)) {
                continue;
            }
            var theirs = new Recur<LocalDate>(rule).getDates(from, from, LAST).stream()
                    .filter(day -> day.isBefore(LAST))
                    .sorted().distinct().toList();
            assertThat(ours(rule, from, from, LAST.minusDays(1))).as(rule + " from " + from + ", seed " + (SEED + 1))
                    .isEqualTo(theirs);
            compared++;
        }
        assertThat(compared).isGreaterThan(1000);
    }

    private static String rule(SplittableRandom random) {
        var freq = any(random, "DAILY", "WEEKLY", "MONTHLY", "YEARLY");
        boolean months = freq.equals("MONTHLY") || freq.equals("YEARLY");
        var parts = new ArrayList<>(List.of("FREQ=" + freq));
        some(random, 2, parts, () -> "INTERVAL=" + random.nextInt(1, random.nextInt(4) == 0 ? 14 : 4));
        some(random, 4, parts, () -> "BYMONTH=" + list(random, () -> random.nextInt(1, 13)));
        if (!freq.equals("WEEKLY")) {
            some(random, 3, parts, () -> "BYMONTHDAY=" + list(random, () -> signed(random, 31)));
        }
        boolean numbered = months && random.nextBoolean();
        some(random, 2, parts,
                () -> "BYDAY=" + list(random, () -> (numbered
                        ? any(random, "1", "2", "3", "4", "5", "-1",
                                "-2")
                        : "") + any(random, "MO", "TU", "WE", "TH", "FR", "SA", "SU")));
        if (freq.equals("YEARLY")) {
            some(random, 6, parts, () -> "BYYEARDAY=" + list(random, () -> signed(random, 366)));
        }
        if (parts.stream().anyMatch(part -> part.matches("BY.*DAY=.*"))) {
            some(random, 5, parts, () -> "BYSETPOS=" + list(random, () -> any(random, "1", "2", "3", "-1", "-2")));
        }
        some(random, 8, parts, () -> "WKST=" + any(random, "MO", "SU", "WE"));
        parts.addAll(switch (random.nextInt(5)) {
            case 0 -> List.of("COUNT=" + random.nextInt(1, 40));
            case 1 -> List.of("UNTIL=" + (2026 + random.nextInt(4)) + "0%d%d".formatted(random.nextInt(1, 10),
                    random.nextInt(10, 29)));
            default -> List.of();
        });
        return String.join(";", parts);
    }

    private static void some(SplittableRandom random, int oneIn, List<String> parts, Supplier<String> part) {
        if (random.nextInt(oneIn) == 0) {
            parts.add(part.get());
        }
    }

    private static int signed(SplittableRandom random, int most) {
        int number = random.nextInt(1, most + 1);
        return random.nextInt(3) == 0 ? -number : number;
    }

    private static String any(SplittableRandom random, String... words) {
        return words[random.nextInt(words.length)];
    }

    private static String list(SplittableRandom random, Supplier<Object> one) {
        return IntStream.range(0, random.nextInt(1, 4)).mapToObj(i -> String.valueOf(one.get())).distinct()
                .collect(Collectors.joining(","));
    }

    /** What ical4j has otherwise, and why the RFC is with us: the sentence of 3.3.10 that decides. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            // "Valid values are 1 to 31 or -31 to -1"; the table: BYMONTHDAY limits a DAILY rule
            "FREQ=DAILY;BYMONTHDAY=-11;BYMONTH=1|2026-02-25|2027-01-21 2028-01-21",
            // the table: BYDAY limits where BYMONTHDAY is present; a number is "the nth occurrence within the MONTHLY rule"
            "FREQ=MONTHLY;BYMONTHDAY=21;BYDAY=3WE|2026-02-27|2026-10-21 2027-04-21",
            // BYSETPOS is about "the set of recurrence instances": in a February of 29 days -10 and 20 are one
            "FREQ=MONTHLY;BYMONTH=2;BYMONTHDAY=-10,20,28;BYSETPOS=3|2027-01-01|2027-02-28 2029-02-28",
            // "The default value is MO" of WKST: 2026-02-08 is a Sunday, the last day of its week
            "FREQ=WEEKLY;INTERVAL=3;BYDAY=TU|2026-02-08|2026-02-24 2026-03-17",
            // the table: BYMONTH limits days, not weeks by the month they begin in
            "FREQ=WEEKLY;BYDAY=WE;BYMONTH=3|2028-02-01|2028-03-01 2028-03-08",
            // one day is one instance, whatever positions it has
            "FREQ=MONTHLY;BYDAY=-1FR;BYSETPOS=1,-1;COUNT=2|2027-06-01|2027-06-25 2027-07-30",
            // BYMONTH "identifies" months: a day of the year outside of them is not in it
            "FREQ=YEARLY;BYMONTH=3,12;BYYEARDAY=1,60|2026-03-01|2026-03-01 2027-03-01"})
    void whereIcal4jDiffersTheTextDecides(String rule, LocalDate from, String firstTwo) {
        var theirs = new Recur<LocalDate>(rule).getDates(from, from, LocalDate.of(2040, 1, 1)).stream().sorted()
                .limit(2)
                .toList();
        var days = Arrays.stream(firstTwo.split(" ")).map(LocalDate::parse).toList();
        assertThat(ours(rule, from, from, LocalDate.of(2039, 12, 31))).startsWith(days.toArray(LocalDate[]::new));
        assertThat(theirs).isNotEqualTo(days);
    }

    /**
     * Examples of RFC 5545, 3.8.5.3, all of which start on 1997-09-02 unless told: rule, first day, the days printed
     * there. Typed from memory of the RFC, not copied from its text.
     */
    private static final Map<String, String> EXAMPLES = Map.ofEntries(
            Map.entry("FREQ=DAILY;INTERVAL=10;COUNT=5", "09-02 09-12 09-22 10-02 10-12"),
            Map.entry("FREQ=WEEKLY;INTERVAL=2;WKST=SU", "09-02 09-16 09-30 10-14 10-28 11-11 11-25 12-09 12-23"),
            Map.entry("FREQ=WEEKLY;COUNT=10;WKST=SU;BYDAY=TU,TH",
                    "09-02 09-04 09-09 09-11 09-16 09-18 09-23 09-25 09-30 10-02"),
            Map.entry("FREQ=WEEKLY;UNTIL=19971007;WKST=SU;BYDAY=TU,TH",
                    "09-02 09-04 09-09 09-11 09-16 09-18 09-23 09-25 09-30 10-02 10-07"),
            Map.entry("FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH",
                    "09-02 09-04 09-16 09-18 09-30 10-02 10-14 10-16"),
            Map.entry("FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15",
                    "09-02 09-15 10-02 10-15 11-02 11-15 12-02 12-15 1998-01-02 1998-01-15"),
            Map.entry("FREQ=MONTHLY;INTERVAL=2;BYDAY=TU", "09-02 09-09 09-16 09-23 09-30 11-04 11-11 11-18 11-25"),
            Map.entry("FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13",
                    "1998-02-13 1998-03-13 1998-11-13 1999-08-13 2000-10-13"),
            Map.entry("FREQ=MONTHLY;COUNT=3;BYDAY=TU,WE,TH;BYSETPOS=3|1997-09-04", "09-04 10-07 11-06"),
            Map.entry("FREQ=MONTHLY;BYDAY=MO,TU,WE,TH,FR;BYSETPOS=-2|1997-09-29",
                    "09-29 10-30 11-27 12-30 1998-01-29 1998-02-26 1998-03-30"),
            Map.entry("FREQ=MONTHLY;COUNT=10;BYDAY=1FR|1997-09-05", "09-05 10-03 11-07 12-05 1998-01-02 1998-02-06"
                    + " 1998-03-06 1998-04-03 1998-05-01 1998-06-05"),
            Map.entry("FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU|1997-09-07",
                    "09-07 09-28 11-02 11-30 1998-01-04 1998-01-25 1998-03-01 1998-03-29 1998-05-03 1998-05-31"),
            Map.entry("FREQ=MONTHLY;COUNT=6;BYDAY=-2MO|1997-09-22",
                    "09-22 10-20 11-17 12-22 1998-01-19 1998-02-16"),
            Map.entry("FREQ=MONTHLY;BYMONTHDAY=-3|1997-09-28", "09-28 10-29 11-28 12-29 1998-01-29 1998-02-26"),
            Map.entry("FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1|1997-09-30",
                    "09-30 10-01 10-31 11-01 11-30 12-01 12-31 1998-01-01 1998-01-31 1998-02-01"),
            Map.entry("FREQ=MONTHLY;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13|1997-09-13", "09-13 10-11 11-08 12-13"
                    + " 1998-01-10 1998-02-07 1998-03-07 1998-04-11 1998-05-09 1998-06-13"),
            Map.entry("FREQ=YEARLY;COUNT=10;BYMONTH=6,7|1997-06-10", "06-10 07-10 1998-06-10 1998-07-10 1999-06-10"
                    + " 1999-07-10 2000-06-10 2000-07-10 2001-06-10 2001-07-10"),
            Map.entry("FREQ=YEARLY;INTERVAL=2;COUNT=10;BYMONTH=1,2,3|1997-03-10",
                    "03-10 1999-01-10 1999-02-10 1999-03-10"
                            + " 2001-01-10 2001-02-10 2001-03-10 2003-01-10 2003-02-10 2003-03-10"),
            Map.entry("FREQ=YEARLY;INTERVAL=3;COUNT=10;BYYEARDAY=1,100,200|1997-01-01", "01-01 04-10 07-19 2000-01-01"
                    + " 2000-04-09 2000-07-18 2003-01-01 2003-04-10 2003-07-19 2006-01-01"),
            Map.entry("FREQ=YEARLY;BYDAY=20MO|1997-05-19", "05-19 1998-05-18 1999-05-17"),
            Map.entry("FREQ=YEARLY;BYMONTH=3;BYDAY=TH|1997-03-13", "03-13 03-20 03-27 1998-03-05 1998-03-12 1998-03-19"
                    + " 1998-03-26 1999-03-04 1999-03-11 1999-03-18 1999-03-25"),
            // U.S. Presidential Election day
            Map.entry("FREQ=YEARLY;INTERVAL=4;BYMONTH=11;BYDAY=TU;BYMONTHDAY=2,3,4,5,6,7,8|1996-11-05",
                    "1996-11-05 2000-11-07 2004-11-02"),
            // WKST makes the difference
            Map.entry("FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO|1997-08-05", "08-05 08-10 08-19 08-24"),
            Map.entry("FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU|1997-08-05", "08-05 08-17 08-19 08-31"),
            // an invalid date (the 30th of February) is ignored
            Map.entry("FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5|2007-01-15",
                    "2007-01-15 2007-01-30 2007-02-15 2007-03-15 2007-03-30"));

    @Test
    void theExamplesOfTheRfcComeOutAsPrinted() {
        EXAMPLES.forEach((given, printed) -> {
            var rule = given.split("\\|");
            var from = LocalDate.parse(rule.length > 1 ? rule[1] : "1997-09-02");
            var days = Stream.of(printed.split(" ")).map(day -> day.length() == 5 ? "1997-" + day : day)
                    .map(LocalDate::parse).toList();
            var found = ours(rule[0], from, from, LocalDate.of(2020, 1, 1));
            assertThat(found).as(given).startsWith(days.toArray(LocalDate[]::new));
            if (rule[0].matches(".*(COUNT|UNTIL).*")) {
                assertThat(found).as(given).hasSameSizeAs(days);
            }
        });
    }

    /** Far days are reached by jumps: a COUNT needs each day counted, and even then it is the work of milliseconds. */
    @Test
    void aRuleOfLongAgoIsAskedAboutToday() {
        var from = LocalDate.of(1970, 1, 1);
        var today = LocalDate.of(2026, 11, 25);
        long days = ChronoUnit.DAYS.between(from, today);
        assertThat(ours("FREQ=DAILY", from, today, today)).containsExactly(today);
        assertThat(ours("FREQ=DAILY;COUNT=" + days, from, today, today)).isEmpty();
        assertThat(ours("FREQ=DAILY;COUNT=" + (days + 1), from, today, today)).containsExactly(today);
    }
}
