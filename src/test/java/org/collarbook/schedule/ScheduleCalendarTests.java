package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.platform.Caution;
import org.collarbook.schedule.CalendarRows.Counted;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.jdbc.core.simple.JdbcClient;

import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.data.ParserException;
import net.fortuna.ical4j.model.component.CalendarComponent;

/** Read back by the parser of ical4j; lines as RFC 5545, 3.1 asks. */
@RegisterTest
@ExtendWith(OutputCaptureExtension.class)
class ScheduleCalendarTests {

    private static final String NOBODY = "AAAAAAAAAABBBBBBBBBBCCCCCCCCCCDDDDDDDDDDEEE";

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;
    private final JdbcClient jdbc;

    ScheduleCalendarTests(Api api, Given given, Tables tables, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    private UUID siteWith(String... manufactured) {
        var body = Given.depot();
        body.put("name", "Dépôt, of a name; that is longer than a line of a calendar may be: ééééééééééééééééé");
        var site = UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
        for (var month : manufactured) {
            var cylinder = Given.cylinder();
            cylinder.put("manufactured", month);
            given.moved(given.registered(cylinder), site, "2026-11-20T09:00:00Z");
        }
        return site;
    }

    private Answer calendar(String query) {
        return api.as(Role.CLERK).get("/api/schedule?format=ics&" + query).expect(200);
    }

    private static List<CalendarComponent> parsed(Answer answer) {
        try {
            assertThat(answer.body().split("\r\n")).allSatisfy(
                    line -> assertThat(line.getBytes(StandardCharsets.UTF_8).length).isBetween(1, 75));
            return new CalendarBuilder().build(new StringReader(answer.body())).getComponents();
        } catch (IOException | ParserException unreadable) {
            throw new AssertionError(answer.body(), unreadable);
        }
    }

    private static String value(CalendarComponent of, String property) {
        return of.getRequiredProperty(property).getValue();
    }

    @Test
    void hasAnEventForEachSiteAndMonth() {
        var site = siteWith("2010-02", "2014-11", "2014-11", "2015-02");
        var answer = calendar("site=" + site);
        assertThat(answer.contentType()).isEqualToIgnoringCase("text/calendar;charset=UTF-8");
        assertThat(answer.header("Content-Disposition")).isEqualTo("attachment; filename=\"schedule.ics\"");
        var events = parsed(answer);
        assertThat(events).extracting(CalendarComponent::getName).containsOnly("VEVENT");
        assertThat(events).extracting(event -> value(event, "UID")).containsExactly(
                "schedule-" + site + "-2022-02@collarbook", "schedule-" + site + "-2026-11@collarbook",
                "schedule-" + site + "-2027-02@collarbook");
        assertThat(events).extracting(event -> value(event, "DTSTART")).containsExactly("20220228", "20261130",
                "20270228");
        assertThat(answer.body()).contains("DTSTART;VALUE=DATE:20261130");
        assertThat(events.get(0).getRequiredProperty("SUMMARY").getValue()).endsWith(": 1 falls due (1 overdue)")
                .contains("Dépôt, of a name; that");
        assertThat(value(events.get(1), "SUMMARY")).endsWith(": 2 fall due");
        assertThat(value(events.get(1), "DESCRIPTION")).startsWith("2 × 20 lb: shell, due this month\n")
                .endsWith(Caution.TEXT);
    }

    @Test
    void anEventKeepsItsNameUnlessItTellsOfSomeOnly() {
        var site = siteWith("2014-11", "2015-02");
        var all = parsed(calendar("site=" + site));
        clock.set(TestClock.TODAY.plusDays(40));
        assertThat(value(parsed(calendar("from=2026-10&site=" + site)).getFirst(), "UID"))
                .isEqualTo(value(all.getFirst(), "UID"));
        var some = parsed(calendar("status=OVERDUE&site=" + site));
        assertThat(some).hasSize(1);
        assertThat(value(some.getFirst(), "UID")).isNotEqualTo(value(all.getFirst(), "UID"));
    }

    @Test
    void nothingIsSaid() {
        var nothing = parsed(calendar("site=" + siteWith()));
        assertThat(nothing).extracting(CalendarComponent::getName).containsExactly("VTODO");
    }

    @Test
    void aDescriptionIsCut() {
        var counted = IntStream.range(0, EventText.MOST_LINES + 2).mapToObj(n -> new Counted(YearMonth.of(2026, 11),
                null, null, null, n + " lb", "SHELL", "OVERDUE", 2)).toList();
        assertThat(EventText.description(counted)).contains("\nand 4 more\n");
        assertThat(EventText.summary(counted)).isEqualTo("No recorded place: 64 fall due (64 overdue)");
        assertThat(counted.getFirst().lastDay()).isEqualTo(LocalDate.of(2026, 11, 30));
    }

    private Answer opened(Role role, Map<String, Object> filter) {
        return api.as(role).post("/api/calendar-feeds", Map.of("name", "Due soon", "filter", filter)).expect(201);
    }

    private String path(Answer opened) {
        assertThat(opened.text("/url")).startsWith(api.baseUrl() + "/calendars/");
        return opened.text("/url").substring(api.baseUrl().length());
    }

    @ParameterizedTest
    @EnumSource(names = {"CLERK", "DISPATCHER", "ADMINISTRATOR"})
    void aFeedIsReadByItsTokenAloneUntilItIsRevoked(Role role, CapturedOutput output) {
        var site = siteWith("2014-11", "2015-02");
        var code = jdbc.sql("select code from site where id = ?").param(site).query(String.class).single();
        var feed = opened(role, Map.of("site", code, "to", "2026-12"));
        var path = path(feed);
        assertThat(path).matches("/calendars/[A-Za-z0-9_-]{43}\\.ics");
        var read = api.anonymous().get(path).expect(200);
        assertThat(read.contentType()).isEqualToIgnoringCase("text/calendar;charset=UTF-8");
        assertThat(read.header("Cache-Control")).contains("no-store");
        // that filter, whatever else is asked
        assertThat(parsed(api.anonymous().get(path + "?to=2030-01").expect(200))).extracting(one -> value(one, "UID"))
                .containsExactly("schedule-" + site + "-2026-11@collarbook");
        var token = path.substring("/calendars/".length(), path.length() - 4);
        var list = api.as(role).get("/api/calendar-feeds").expect(200);
        assertThat(list.body()).contains(feed.id(), site.toString()).doesNotContain(token);
        assertThat(jdbc.sql("select count(*) from calendar_feed f where f::text like '%' || ? || '%'").param(token)
                .query(Long.class).single()).isZero();
        api.as(role).delete("/api/calendar-feeds/" + feed.id()).expect(204);
        api.as(role).delete("/api/calendar-feeds/" + feed.id()).expect(204);
        api.anonymous().get(path).expectProblem(404, "NOT_FOUND");
        assertThat(output).doesNotContain(token);
    }

    @Test
    void aTokenOpensNothingElse() {
        var token = path(opened(Role.CLERK, Map.of())).replaceAll("/calendars/|\\.ics", "");
        api.withKey(token).get("/api/schedule").expectProblem(401, "KEY_REQUIRED");
        api.withKey("cb_" + token).get("/api/schedule").expectProblem(401, "KEY_REQUIRED");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/calendars/x.ics", "/calendars/" + NOBODY + ".ics", "/calendars/.ics",
            "/calendars/%27%20or%20true.ics"})
    void anUnknownTokenIsNotFound(String path) {
        assertThat(api.anonymous().get(path).status()).isEqualTo(404);
        assertThat(api.anonymous().with("Accept", "text/calendar").get(path).status()).isEqualTo(404);
    }

    @Test
    void aFeedThatCannotBeIsRefusedAndLeavesNothing() {
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).post("/api/calendar-feeds",
                Map.of("name", " ", "filter", Map.of("site", "nowhere", "from", "soon")))
                .expectProblem(400, "INVALID_INPUT").errors()).containsExactlyInAnyOrderEntriesOf(Map.of("/name",
                        "MISSING", "/filter/site", "UNKNOWN_SITE", "/filter/from", "INVALID_MONTH")));
        api.as(Role.CLERK).post("/api/calendar-feeds", "{\"name\":\"x\",\"filter\":{\"depot\":\"x\"}}")
                .expectProblem(400, "INVALID_INPUT");
        api.as(Role.FILLER).get("/api/calendar-feeds").expectProblem(403, "FORBIDDEN");
        api.as(Role.CLERK).delete("/api/calendar-feeds/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND");
    }
}
