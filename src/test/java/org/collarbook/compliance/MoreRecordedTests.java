package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A container is read without its holds, parts and the rest only where the database has noted that there are none. */
@RegisterTest
@Import(RandomFleet.class)
class MoreRecordedTests {

    private static final Pattern READ = Pattern.compile("(?:from|join) (?:filed_)?(\\w+) \\w+");
    /** What the short statement reads too. */
    private static final Set<String> ALWAYS_READ = Set.of("container", "declaration", "placement", "site", "fill",
            "requalification");
    /** Rows that only end what a row of another table has begun. */
    private static final Set<String> ENDINGS = Set.of("lift_in_force", "part_removal", "return_to_service");

    private final RandomFleet fleet;
    private final JdbcClient jdbc;

    MoreRecordedTests(RandomFleet fleet, JdbcClient jdbc) {
        this.fleet = fleet;
        this.jdbc = jdbc;
    }

    @Test
    void everyTableThatTheWholeStatementReadsOnTopNotesItself() {
        var read = READ.matcher(KnownContainers.SELECT).results().map(match -> match.group(1))
                .map(name -> name.equals("claimed_place") ? "place_claim" : name)
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(read).contains("hold", "part", "emptying", "place_claim");
        read.removeAll(ALWAYS_READ);
        read.removeAll(ENDINGS);
        // what the views filed_… add, and what closes a record
        read.add("refiled");
        read.add("absorbed");
        assertThat(jdbc.sql("""
                select tgrelid::regclass::text from pg_trigger
                where tgfoid::regproc::text in ('note_more_recorded', 'note_corrected') and tgenabled = 'O'""")
                .query(String.class).set()).containsAll(read);
    }

    @Test
    void withNothingMoreRecordedBothStatementsSayTheSame() {
        fleet.of(200, 11);
        int plain = 0;
        for (var id : jdbc.sql("select id from container order by id desc limit 2000").query(UUID.class).list()) {
            var read = jdbc
                    .sql("select short.* from (" + KnownContainers.PLAIN + "where c.id = ?) short where not more")
                    .param(id).query(KnownContainerRow::read).optional();
            if (read.isPresent()) {
                plain++;
                assertThat(read).isEqualTo(jdbc.sql(KnownContainers.SELECT + "where c.id = ? and "
                        + KnownContainers.OPEN).param(id).query(KnownContainerRow::read).optional());
            }
        }
        assertThat(plain).isGreaterThan(100);
    }
}
