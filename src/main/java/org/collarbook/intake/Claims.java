package org.collarbook.intake;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.Tag;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What earlier rows of the same file that were taken have laid claim to: their marks, their tags, and tags they took off
 * their containers. Kept in a table by 122-bit digests, so that memory does not grow with the file: a temporary one where
 * the pass is one transaction; where it goes in pieces, one that outlives a kill. Making the claims again from the file
 * would not do there: which rows were taken, and which tags they took off, the register no longer tells.
 */
final class Claims {

    private static final String LASTING = "ledger_claim";
    private static final String OF_ONE_TRANSACTION = "ledger_claim_of_transaction";

    /** Marks but for maker and month stand in the digest; a tag has neither. */
    record Claim(UUID digest, @Nullable String maker, @Nullable YearMonth month, long line, int content) {

        static Claim of(Line line, NaturalKey key) {
            return new Claim(line.digest(), key.maker() == null ? null : key.maker().value(), key.manufactured(),
                    line.number(), line.content());
        }

        static Claim of(Tag tag, long line) {
            return new Claim(Claims.digest(tag), null, null, line, 0);
        }

        static Claim read(ResultSet row, int number) throws SQLException {
            var month = row.getObject("month", LocalDate.class);
            return new Claim(row.getObject("digest", UUID.class), row.getString("maker"),
                    month == null ? null : YearMonth.from(month), row.getLong("line"), row.getInt("content"));
        }
    }

    private final JdbcClient jdbc;
    private final int pass;
    private final String table;

    Claims(JdbcClient jdbc, int pass, boolean inPieces) {
        this.jdbc = jdbc;
        this.pass = pass;
        this.table = inPieces ? LASTING : OF_ONE_TRANSACTION;
    }

    static void openOfOneTransaction(JdbcClient jdbc) {
        jdbc.sql(
                "create temporary table " + OF_ONE_TRANSACTION + " (like " + LASTING + " including all) on commit drop")
                .update();
    }

    /** Whatever became of a pass, nobody asks for its claims once it is over. */
    static void forgetWhatIsOver(JdbcClient jdbc) {
        jdbc.sql("delete from " + LASTING + " where pass in (select number from ledger_pass where purpose = 'COMMIT'"
                + " and status in ('DONE', 'FAILED', 'CANCELLED'))").update();
    }

    static UUID digest(NaturalKey key) {
        return UUID.nameUUIDFromBytes((key.scheme() + " " + key.specification() + " " + key.serial())
                .getBytes(StandardCharsets.UTF_8));
    }

    static UUID digest(Tag tag) {
        return UUID.nameUUIDFromBytes(("tag " + tag).getBytes(StandardCharsets.UTF_8));
    }

    /** By digest, those that may concern one of the lines. */
    Map<UUID, List<Claim>> earlier(Collection<Line> lines) {
        var wanted = new HashSet<UUID>();
        for (var line : lines) {
            wanted.add(line.digest());
            var entry = line.entry();
            if (entry != null && entry.tag() != null) {
                wanted.add(digest(entry.tag()));
            }
        }
        var found = new HashMap<UUID, List<Claim>>();
        jdbc.sql("select digest, maker, month, line, content from " + table + " where pass = ? and digest = any (?)")
                .params(List.of(pass, wanted.toArray(UUID[]::new))).query(Claim::read).list()
                .forEach(claim -> found.computeIfAbsent(claim.digest(), digest -> new ArrayList<>(1)).add(claim));
        return found;
    }

    void add(List<Claim> claims) {
        if (!claims.isEmpty()) {
            jdbc.sql("insert into " + table + " (pass, digest, maker, month, line, content) select ?, * from"
                    + " unnest(?::uuid[], ?::text[], ?::date[], ?::bigint[], ?::int[])")
                    .params(List.of(pass, claims.stream().map(Claim::digest).toArray(UUID[]::new),
                            claims.stream().map(Claim::maker).toArray(String[]::new),
                            claims.stream().map(Claim::month).map(month -> month == null ? null : month + "-01")
                                    .toArray(String[]::new),
                            claims.stream().map(Claim::line).toArray(Long[]::new),
                            claims.stream().map(Claim::content).toArray(Integer[]::new)))
                    .update();
        }
    }
}
