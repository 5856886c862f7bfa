package org.collarbook.schedule;

import java.time.Duration;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;

import org.collarbook.platform.Turns;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** The schedule for whoever waits for the answer: what is stored, or a replay of no more containers than can be waited for. */
@Component
class Replays {

    private final Turns turns = new Turns(1, Duration.ofSeconds(5),
            "Another schedule is being made anew: ask again in some seconds.");
    private final int most;
    private final ReplayedTables tables;
    private final Clock clock;
    private final TransactionTemplate snapshot;

    Replays(@Value("${collarbook.schedule.replayed-most:20000}") int most, ReplayedTables tables, Clock clock,
            PlatformTransactionManager transactions) {
        this.most = most;
        this.tables = tables;
        this.clock = clock;
        this.snapshot = new TransactionTemplate(transactions);
        this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
    }

    /** What is done with the rows. */
    interface Reader<T> {

        T read(Source source) throws IOException;
    }

    <T> T read(ScheduleFilter filter, @Nullable Replay replay, Reader<T> reader) throws IOException {
        if (replay == null) {
            return reader.read(Source.stored(clock.instant()));
        }
        try {
            return snapshot.execute(status -> {
                replay(filter, replay);
                try {
                    return reader.read(Source.replayed(clock.instant()));
                } catch (IOException gone) {
                    throw new UncheckedIOException(gone);
                }
            });
        } catch (UncheckedIOException gone) {
            throw gone.getCause();
        }
    }

    /** One at a time: each reads a fleet whole, and a filler must not wait for it. */
    private void replay(ScheduleFilter filter, Replay replay) {
        try (var _ = turns.take()) {
            long asked = tables.ask(filter, replay, most + 1L);
            if (asked > most) {
                throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "FLEET_TOO_LARGE", "The schedule would have to be"
                        + " made anew for more than " + most + " containers: ask site by site, customer by customer or"
                        + " route by route, or have it exported by POST /api/schedule-exports.").with("most", most)
                        .asException();
            }
            tables.fill(replay, asked, _ -> {
            });
        }
    }
}
