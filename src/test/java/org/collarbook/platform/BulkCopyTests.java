package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Array;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;

import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Texts come out of the table as they went in, whatever COPY makes of a backslash ("COPY", PostgreSQL's documentation). */
@RegisterTest
class BulkCopyTests {

    private static final List<String> PIECES = List.of("\\", "\t", "\n", "\r", "\\N", "\\.", "\"", "{", ",", "NULL",
            "a", " ",
            "é", "漢", "\u00a0", "\uD83D\uDE00", "x".repeat(70_000));

    private final BulkCopy copy;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    BulkCopyTests(BulkCopy copy, JdbcClient jdbc, TransactionTemplate transaction) {
        this.copy = copy;
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    private static List<@Nullable String> texts(long seed) {
        var random = new Random(seed);
        var texts = new ArrayList<@Nullable String>(PIECES);
        texts.add(null);
        texts.add("");
        for (int i = 0; i < 400; i++) {
            var text = new StringBuilder();
            for (int piece = random.nextInt(6); piece > 0; piece--) {
                text.append(PIECES.get(random.nextInt(PIECES.size() - 1)));
            }
            texts.add(text.toString());
        }
        return texts;
    }

    @Test
    void textsComeBackAsTheyWere() {
        var texts = texts(5);
        transaction.executeWithoutResult(status -> {
            jdbc.sql("create temporary table copied (n int, t text, a text[]) on commit drop").update();
            copy.into("copied (n, t, a)", IntStream.range(0, texts.size()).boxed().toList(), n -> row(texts, n));
            jdbc.sql("select n, t, a from copied order by n").query(row -> {
                var sent = texts.get(row.getInt(1));
                assertThat(row.getString(2)).isEqualTo(sent);
                assertThat(array(row.getArray(3))).isEqualTo(sent == null ? null : List.of(sent, "b"));
            });
            assertThat(jdbc.sql("select count(*) from copied").query(Integer.class).single())
                    .isEqualTo(texts.size());
        });
    }

    private static @Nullable Object[] row(List<@Nullable String> texts, int n) {
        var text = texts.get(n);
        return new @Nullable Object[]{n, text, text == null ? null : new String[]{text, "b"}};
    }

    private static @Nullable List<Object> array(@Nullable Array array) throws SQLException {
        return array == null ? null : List.of((Object[]) array.getArray());
    }
}
