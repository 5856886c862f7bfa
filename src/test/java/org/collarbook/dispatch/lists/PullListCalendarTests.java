package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

import org.collarbook.dispatch.lists.PullList.Asked;
import org.collarbook.dispatch.lists.PullList.Stop;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.Property;
import net.fortuna.ical4j.model.component.CalendarComponent;

/** What is written is held against RFC 5545 by a reader of its own (the lines of section 3.1, the text of 3.3.11). */
class PullListCalendarTests {

    private static final Clock CLOCK = Printed.CLOCK;

    static Stream<PullList> lists() {
        return Stream.of(MadeList.normal(), MadeList.nasty(), MadeList.empty(), severalDays(), noDays());
    }

    @ParameterizedTest
    @MethodSource("lists")
    void lines_are_folded_and_ended_as_the_standard_says(PullList list) {
        var text = written(list, CLOCK);
        assertThat(text).endsWith("END:VCALENDAR\r\n").doesNotContain("VALARM", "CATEGORIES", "\uFFFD");
        assertThat(text.replace("\r\n", "")).doesNotContain("\r", "\n");
        assertThat(text.split("\r\n")).isNotEmpty()
                .allSatisfy(line -> assertThat(line.getBytes(StandardCharsets.UTF_8).length).isBetween(1, 75));
        assertThat(unfolded(text)).startsWith("BEGIN:VCALENDAR").contains("VERSION:2.0")
                .allSatisfy(line -> assertThat(line).matches("[A-Z-]+(;[A-Z]+=[A-Z]+)*:.*"))
                .filteredOn(line -> line.startsWith("DESCRIPTION") || line.startsWith("SUMMARY"))
                .isNotEmpty().allSatisfy(line -> assertThat(line.substring(line.indexOf(':') + 1))
                        .matches("(\\\\[\\\\;,nN]|[^\\\\;,\\p{Cntrl}])*+"));
    }

    @ParameterizedTest
    @MethodSource("lists")
    void another_reader_finds_what_was_meant(PullList list) {
        var read = components(list);
        assertThat(read).isNotEmpty().allSatisfy(one -> {
            assertThat(value(one, "DTSTAMP")).isEqualTo("20261202T204100Z");
            assertThat(value(one, "DESCRIPTION")).endsWith(list.caution());
        });
        assertThat(read).extracting(one -> value(one, "UID")).doesNotHaveDuplicates();
    }

    @Test
    void one_route_on_one_day_is_one_event_with_what_to_bring_back_and_to_load() {
        var event = components(MadeList.normal()).getFirst();
        assertThat(components(MadeList.normal())).hasSize(1);
        assertThat(value(event, "DTSTART")).isEqualTo("20261203");
        assertThat(value(event, "SUMMARY")).isEqualTo("Route N-2: 25 to bring back, 3 to look into");
        assertThat(value(event, "LOCATION")).isEqualTo("D-1, Harrow Hill depot, 1 Cinder Lane, Harrow Hill");
        assertThat(value(event, "DESCRIPTION")).contains(
                "Load 7 × 100 lb; in date at the depot 10, short 0, over the rack 3\n",
                "\n1. Elm Fork Hardware: 2 × 33.5 lb, 1 × 20 lb, 1 × 100 lb\n",
                "\n3. Old Quarry Campground: 1 × 20 lb, 1 × 33.5 lb, 2 to look into\n");
    }

    @Test
    void what_is_not_known_is_not_told_as_nothing() {
        assertThat(value(components(MadeList.nasty()).getFirst(), "DESCRIPTION")).doesNotContain("null")
                .contains("Café Łódź & Sons – Żółć Propane Exchange,", "3 whose place is in dispute",
                        "and 19 more stops", "Not in this calendar, for no visit is known: 1 stop with 0 on the list"
                                + " and 14 to look into.");
        assertThat(value(components(MadeList.nasty()).getFirst(), "SUMMARY"))
                .isEqualTo("Route N-2: 86 to bring back, 1 to work on at the site, 1 to look into, 3 in dispute");
        var undated = components(noDays());
        assertThat(undated).extracting(CalendarComponent::getName).containsExactly("VTODO");
        assertThat(value(undated.getFirst(), "DESCRIPTION")).contains("1 stop with 0 on the list and 14 to look into");
    }

    @Test
    void stops_are_told_by_route_and_day_in_their_order() {
        var events = components(severalDays());
        assertThat(events).extracting(event -> value(event, "DTSTART"), event -> value(event, "SUMMARY"))
                .extracting(Object::toString)
                .containsExactly("(\"20261203\", \"Route N-1: 4 to bring back\")",
                        "(\"20261203\", \"Route N-2: 8 to bring back\")",
                        "(\"20261204\", \"Route N-1: 4 to bring back\")");
        assertThat(value(events.getFirst(), "DESCRIPTION")).startsWith("Load ").contains("see the list")
                .doesNotContain("Not in this calendar");
        assertThat(value(events.getLast(), "DESCRIPTION"))
                .contains("Not in this calendar, for no visit is known: 1 stop");
    }

    @Test
    void a_day_on_which_nothing_comes_back_says_so() {
        assertThat(components(MadeList.empty())).extracting(event -> value(event, "SUMMARY"))
                .containsExactly("Route N-2: nothing to bring back");
    }

    /** RFC 5545, 3.8.4.7: the UID is what tells a calendar that it has this event already. */
    @Test
    void an_event_keeps_its_uid_and_another_list_does_not_take_its_place() {
        var later = Clock.offset(CLOCK, Duration.ofDays(1));
        assertThat(written(MadeList.normal(), later)).isNotEqualTo(written(MadeList.normal(), CLOCK));
        assertThat(uids(written(MadeList.normal(), later))).isEqualTo(uids(written(MadeList.normal(), CLOCK)))
                .isEqualTo(uids(written(MadeList.empty(), CLOCK))).hasSize(1);
        assertThat(uids(written(severalDays(), later))).isEqualTo(uids(written(severalDays(), CLOCK))).hasSize(3)
                .doesNotContainAnyElementsOf(uids(written(MadeList.normal(), CLOCK)));
    }

    private static PullList severalDays() {
        var stops = MadeList.of(100, false).stops();
        return ofSites(IntStream.range(0, 5).mapToObj(i -> {
            var day = i == 4 ? null : MadeList.THURSDAY.plusDays(i == 3 ? 1 : 0);
            return at(stops.get(i), day, i == 1 || i == 2 ? "N-2" : "N-1");
        }).toList());
    }

    private static PullList noDays() {
        return ofSites(List.of(MadeList.nasty().stops().get(1)));
    }

    private static PullList ofSites(List<Stop> stops) {
        var list = MadeList.list("Sites of one customer; before 2026-12-31", null, stops, List.of(), null);
        return new PullList(new Asked(list.asked().title(), null, null, LocalDate.of(2026, 12, 31)), stops,
                list.count(), list.sizes(), List.of(), null, list.caution());
    }

    private static Stop at(Stop stop, @Nullable LocalDate visit, String route) {
        return new Stop(null, route, stop.site(), visit, null, stop.containers().subList(0, 4), List.of());
    }

    private static String written(PullList list, Clock clock) {
        var out = new ByteArrayOutputStream();
        try {
            new PullListCalendar(clock).write(list, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString(StandardCharsets.UTF_8);
    }

    private static List<CalendarComponent> components(PullList list) {
        try {
            var calendar = new CalendarBuilder().build(new StringReader(written(list, CLOCK)));
            assertThat(calendar.validate().hasErrors()).isFalse();
            return calendar.getComponents();
        } catch (IOException | ParserException e) {
            throw new AssertionError(e);
        }
    }

    private static String value(CalendarComponent component, String property) {
        return component.getProperty(property).map(Property::getValue).orElse("");
    }

    private static List<String> unfolded(String text) {
        return Arrays.asList(text.replace("\r\n ", "").split("\r\n"));
    }

    private static List<String> uids(String text) {
        return unfolded(text).stream().filter(line -> line.startsWith("UID:")).toList();
    }
}
