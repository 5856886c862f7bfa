package org.collarbook.portal.notices;

import java.time.Clock;
import java.time.Duration;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Notices and attempts are kept for ninety days; what still waits after thirty, as for a paused endpoint, is given up. */
@Component
class NoticeUpkeep {

    private static final Duration WAITS = Duration.ofDays(30);
    private static final Duration KEPT = Duration.ofDays(90);
    private static final int CHUNK = 5000;

    private final JdbcClient jdbc;
    private final Clock clock;

    NoticeUpkeep(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    void run() {
        var now = clock.instant();
        jdbc.sql("""
                update notice set status = 'GIVEN_UP', settled_at = ?
                where status = 'PENDING' and next_attempt_at < ? and occurred_at < ?""")
                .params(NoticeQueue.utc(now), NoticeQueue.utc(now.minus(WAITS)), NoticeQueue.utc(now.minus(WAITS)))
                .update();
        int purged = CHUNK;
        while (purged == CHUNK) {
            purged = jdbc.sql("""
                    delete from notice where id in (select id from notice
                      where occurred_at < ? and status <> 'PENDING' limit ?)""")
                    .params(NoticeQueue.utc(now.minus(KEPT)), CHUNK).update();
        }
    }
}
