package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.UUID;
import java.util.function.IntConsumer;

import org.collarbook.bench.Figures;
import org.collarbook.platform.Ids;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What the check of a key costs among 100,000, beside one row by its index in the same run.
 * {@code mvn -Pbench test -Dtest=KeyBenchmark}
 */
@Tag("bench")
@RegisterTest
class KeyBenchmark {

    private static final int KEYS = 100_000;
    private static final int CALLS = 20_000;

    private final Keys keys;
    private final JdbcClient jdbc;
    private final ApiKey[] issued = new ApiKey[1000];
    private final UUID[] ids = new UUID[issued.length];

    KeyBenchmark(Keys keys, JdbcClient jdbc) {
        this.keys = keys;
        this.jdbc = jdbc;
    }

    @Test
    void amongAHundredThousand() {
        jdbc.sql("""
                insert into api_key (id, name, prefix, hash, roles)
                select gen_random_uuid(), 'bench', 'cb_000000', sha256(n::text::bytea), array['filler']
                from generate_series(1, ?) n""").param(KEYS - issued.length).update();
        for (int i = 0; i < issued.length; i++) {
            issued[i] = ApiKey.generate();
            ids[i] = Ids.next();
            jdbc.sql("insert into api_key (id, name, prefix, hash, roles) values (?, 'bench', ?, ?, array['filler'])")
                    .params(ids[i], issued[i].prefix(), issued[i].hash()).update();
        }
        var random = new Random(7);
        IntConsumer check = n -> assertThat(keys.callerOf(issued[random.nextInt(issued.length)])).isPresent();
        IntConsumer row = n -> jdbc.sql("select id, name from api_key where id = ?")
                .param(ids[random.nextInt(ids.length)]).query().singleRow();
        // each key is used once before, which is noted at most once a minute
        times(check, CALLS);
        times(row, CALLS);
        var rows = times(row, CALLS);
        var checks = times(check, CALLS);
        Figures.print("key check among %,d keys: p50 %,.0f µs, p99 %,.0f µs, mean %,.0f µs; one row by JDBC: p50 %,.0f"
                + " µs, p99 %,.0f µs, mean %,.0f µs", KEYS, Figures.percentile(checks, 0.5),
                Figures.percentile(checks, 0.99), mean(checks), Figures.percentile(rows, 0.5),
                Figures.percentile(rows, 0.99), mean(rows));
    }

    private static long[] times(IntConsumer call, int calls) {
        var nanos = new long[calls];
        for (int i = 0; i < calls; i++) {
            long begun = System.nanoTime();
            call.accept(i);
            nanos[i] = System.nanoTime() - begun;
        }
        return nanos;
    }

    private static double mean(long[] nanos) {
        return Arrays.stream(nanos).average().orElseThrow() / 1000;
    }
}
