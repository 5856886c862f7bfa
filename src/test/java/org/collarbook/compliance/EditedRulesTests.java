package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;

import org.collarbook.access.Role;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.Started;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The service is started on an edited copy of its rules: the stored due months follow the edit, and a value that lies
 * ahead is followed on its day. The periods are invented; the shipped one is that of 49 CFR 180.209(e), twelve years.
 */
class EditedRulesTests {

    private static final String FILE = "us/49cfr-180.209.yaml";
    private static final LocalDate SWITCH = LocalDate.of(2027, 3, 1);
    private static final String LAST_VALUE = """
                  - from: 2020-11-30
                    periods: {first: P12Y,\
            """;

    /** As {@code LAST_VALUE}, ended; ten years from 1 November 2026 and seven from 1 March 2027. */
    private static final String EDITED = """
                  - from: 2026-11-01
                    until: 2027-03-01
                    periods: {first: P10Y}
                    citation: {source: hm219b, section: 180.209(e), inForceFrom: 2026-11-01, basis: TEXT}
                  - from: 2027-03-01
                    periods: {first: P7Y}
                    citation: {source: hm219b, section: 180.209(e), inForceFrom: 2027-03-01, basis: TEXT}
                  - from: 2020-11-30
                    until: 2026-11-01
                    periods: {first: P12Y,\
            """;

    @TempDir
    private Path folder;

    private void copyTheRulesAndEditOne() throws IOException {
        for (var file : RuleBookLoader.shipped("regulations/").entrySet()) {
            var path = folder.resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.writeString(path, file.getValue());
        }
        var text = Files.readString(folder.resolve(FILE));
        assertThat(text.split(Pattern.quote(LAST_VALUE), -1)).as("once in the file").hasSize(2);
        Files.writeString(folder.resolve(FILE), text.replace(LAST_VALUE, EDITED));
    }

    private static YearMonth stored(Started service, UUID id) {
        return YearMonth.from(service.get(JdbcClient.class).sql("select due from requirement where container_id = ?")
                .param(id).query(LocalDate.class).single());
    }

    private static void recomputeOn(Started service, LocalDate day) {
        service.get(TestClock.class).set(day);
        service.get(Recompute.class).run();
    }

    @Test
    void storedDueMonthsFollowTheEditedRulesAndTheirSwitches() throws Exception {
        var database = Started.database();
        UUID id;
        String shipped;
        try (var service = Started.on(database, Map.of())) {
            service.get(TestClock.class).set(TestClock.TODAY);
            shipped = service.get(RuleBook.class).hash();
            id = service.get(Given.class).registered();
            service.get(Given.class).moved(id, service.get(Given.class).site(null), "2026-11-20T09:00:00Z");
            service.get(Recompute.class).run();
            assertThat(stored(service, id)).as("May 2004 and twelve years").isEqualTo(YearMonth.of(2016, 5));
        }
        copyTheRulesAndEditOne();
        try (var service = Started.on(database, Map.of("collarbook.rules", folder.toString()))) {
            isStoredWholeBesideTheFirst(service, shipped);
            recomputeOn(service, TestClock.TODAY);
            assertThat(stored(service, id)).as("ten years since 1 November").isEqualTo(YearMonth.of(2014, 5));
            recomputeOn(service, SWITCH.minusDays(1));
            assertThat(stored(service, id)).as("the day before the switch").isEqualTo(YearMonth.of(2014, 5));
            recomputeOn(service, SWITCH);
            assertThat(stored(service, id)).as("seven years").isEqualTo(YearMonth.of(2011, 5));
            var answer = service.get(Api.class).as(Role.CLERK).get("/api/containers/" + id + "/assessment");
            assertThat(answer.text("/requirements/0/due")).isEqualTo("2011-05");
        }
        try (var service = Started.on(database, Map.of())) {
            theShippedRulesAreBack(service, id);
        }
    }

    /** What the other book judged is judged again once the first is back; a restart alone changes nothing. */
    private static void theShippedRulesAreBack(Started service, UUID id) {
        var jdbc = service.get(JdbcClient.class);
        recomputeOn(service, TestClock.TODAY);
        assertThat(stored(service, id)).as("twelve years again").isEqualTo(YearMonth.of(2016, 5));
        var shipped = service.get(LoadedRuleBook.class).id();
        assertThat(jdbc.sql("select distinct rule_book_id from requirement").query(Integer.class).list())
                .containsExactly(shipped);
        var passes = passes(jdbc);
        jdbc.sql("update requirement set due = '1999-01-01'").update();
        load(jdbc, shipped);
        recomputeOn(service, TestClock.TODAY);
        assertThat(stored(service, id)).as("restarted under the same book").isEqualTo(YearMonth.of(1999, 1));

        var edited = jdbc.sql("select id from rule_book where id <> ?").param(shipped).query(Integer.class).single();
        jdbc.sql("update requirement set rule_book_id = ?").param(edited).update();
        load(jdbc, edited);
        recomputeOn(service, TestClock.TODAY);
        assertThat(stored(service, id)).as("another service runs on a later book").isEqualTo(YearMonth.of(1999, 1));
        assertThat(passes(jdbc)).isEqualTo(passes);
        load(jdbc, shipped);
        recomputeOn(service, TestClock.TODAY);
        assertThat(stored(service, id)).as("the other judged, and was gone before it had judged all")
                .isEqualTo(YearMonth.of(2016, 5));
    }

    private static void load(JdbcClient jdbc, int book) {
        jdbc.sql("insert into rule_book_load (rule_book_id) values (?)").param(book).update();
    }

    private static List<String> passes(JdbcClient jdbc) {
        return jdbc.sql("select recompute::text from recompute order by id").query(String.class).list();
    }

    private static void isStoredWholeBesideTheFirst(Started service, String shipped) {
        var edited = service.get(RuleBook.class);
        assertThat(edited.hash()).isNotEqualTo(shipped);
        var stored = service.get(JdbcClient.class).sql("select content from rule_book where hash = ?");
        assertThat(stored.param(shipped).query(String.class).list()).as("the first is kept").hasSize(1);
        var content = service.get(JdbcClient.class).sql("select content from rule_book where hash = ?")
                .param(edited.hash()).query(String.class).single();
        assertThat(RuleBookLoader.ofStored(content, edited.engineVersion()).hash()).isEqualTo(edited.hash());
        assertThat(service.get(Api.class).as(Role.CLERK).get("/api/rules/us.180.209.e").text("/ruleBook/hash"))
                .isEqualTo(edited.hash());
    }
}
