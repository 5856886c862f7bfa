package org.collarbook.intake;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.Tag;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What earlier rows of the same file have laid claim to: their natural keys, their tags, and tags they give up. Kept in
 * a temporary table by a 122-bit digest, so that memory does not grow with the file. A row that makes sense by itself
 * claims its key even where it is refused later on for its tag or its place.
 */
final class Claims {

    private final JdbcClient jdbc;

    Claims(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    static UUID digest(NaturalKey key) {
        return UUID.nameUUIDFromBytes(key.toString().getBytes(StandardCharsets.UTF_8));
    }

    static UUID digest(Tag tag) {
        return UUID.nameUUIDFromBytes(("tag " + tag).getBytes(StandardCharsets.UTF_8));
    }

    /** Claims each for its line; gives those that an earlier line has, with that line. */
    Map<UUID, Long> claim(LinkedHashMap<UUID, Long> wanted) {
        var taken = new HashMap<UUID, Long>();
        if (wanted.isEmpty()) {
            return taken;
        }
        var digests = wanted.keySet().toArray(UUID[]::new);
        int claimed = jdbc.sql("insert into ledger_seen select * from unnest(?::uuid[], ?::bigint[])"
                + " on conflict do nothing").params(List.of(digests, wanted.values().toArray(Long[]::new))).update();
        if (claimed < wanted.size()) {
            jdbc.sql("select digest, line from ledger_seen where digest = any (?)").param(digests).query(row -> {
                taken.put(row.getObject(1, UUID.class), row.getLong(2));
            });
            taken.entrySet().removeIf(claim -> claim.getValue().equals(wanted.get(claim.getKey())));
        }
        return taken;
    }
}
