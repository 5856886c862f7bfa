package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.platform.Cursor;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What was recorded before there were chains is given one. */
@RegisterTest
class JournalCatchUpTests {

    private final Api api;
    private final Given given;
    private final JournalCatchUp catchUp;
    private final JdbcClient owner;

    JournalCatchUpTests(Api api, Given given, JournalCatchUp catchUp, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.catchUp = catchUp;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private UUID withoutAChain() {
        var id = given.registered();
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        owner.sql("delete from journal where container_id = ?").param(id).update();
        owner.sql("delete from journal_head where container_id = ?").param(id).update();
        return id;
    }

    /** Of the walk from the container on: other tests leave tens of thousands before it. */
    private Set<UUID> namedFrom(UUID first) {
        var named = new HashSet<UUID>();
        var cursor = Cursor.after(new UUID(first.getMostSignificantBits(), first.getLeastSignificantBits() - 1))
                .toString();
        do {
            var page = api.as(Role.CLERK).get("/api/audit/verification?size=3&cursor=" + cursor).expect(200);
            page.at("/broken").forEach(one -> named.add(UUID.fromString(one.path("container").asString())));
            cursor = page.json().path("next").asString("");
        } while (!cursor.isEmpty());
        return named;
    }

    private void assertWhole(UUID id, int entries) {
        var answer = api.as(Role.CLERK).get("/api/audit/verification?container=" + id).expect(200);
        assertThat(answer.at("/whole").asBoolean()).as(answer.body()).isTrue();
        assertThat(answer.at("/entries").asInt()).isEqualTo(entries);
    }

    @Test
    void theirFactsAreEnteredOnceByHoweverMany() throws Exception {
        var ids = Stream.generate(this::withoutAChain).limit(5).toList();
        assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + ids.getFirst()).expect(200)
                .at("/whole").asBoolean()).isFalse();
        assertThat(namedFrom(ids.getFirst())).as("in the walk over all of them too").containsAll(ids);
        try (var threads = Executors.newFixedThreadPool(3)) {
            for (var one : List.of(threads.submit(catchUp::run), threads.submit(catchUp::run),
                    threads.submit(catchUp::run))) {
                one.get();
            }
        }
        ids.forEach(id -> assertWhole(id, 2));
        catchUp.run();
        assertWhole(ids.getFirst(), 2);
    }

    /** Whoever records something first enters all of it. */
    @Test
    void theNextFactBringsTheEarlierOnes() {
        var id = withoutAChain();
        given.moved(id, given.site(null), "2026-11-21T09:00:00Z");
        assertWhole(id, 3);
    }
}
