package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.HexFormat;
import java.util.UUID;

import org.collarbook.platform.Sha256;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger's bytes as they are kept: in pieces, so that neither end of the service holds the whole file. */
final class StoredFile {

    private static final int PIECE = 1 << 20;

    /** How long the file is, and its digest. */
    record Stored(long bytes, String sha256) {}

    private StoredFile() {}

    static Stored write(JdbcClient jdbc, UUID importId, InputStream file) throws IOException {
        var digest = Sha256.start();
        long bytes = 0;
        int piece = 0;
        for (var content = file.readNBytes(PIECE); content.length > 0; content = file.readNBytes(PIECE)) {
            digest.update(content);
            bytes += content.length;
            jdbc.sql("insert into ledger_import_file (import_id, piece, content) values (?, ?, ?)")
                    .params(importId, piece++, content).update();
        }
        return new Stored(bytes, HexFormat.of().formatHex(digest.digest()));
    }

    static InputStream read(JdbcClient jdbc, UUID importId) {
        return new Pieces(jdbc, importId, jdbc.sql("select bytes from ledger_import where id = ?").param(importId)
                .query(Long.class).single());
    }

    private static final class Pieces extends InputStream {

        private final JdbcClient jdbc;
        private final UUID importId;
        private byte[] content = {};
        private int at;
        private int piece;
        private long toCome;

        Pieces(JdbcClient jdbc, UUID importId, long bytes) {
            this.jdbc = jdbc;
            this.importId = importId;
            this.toCome = bytes;
        }

        @Override
        public int read() {
            return isExhausted() ? -1 : content[at++] & 0xff;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) {
            if (length == 0) {
                return 0;
            }
            if (isExhausted()) {
                return -1;
            }
            int count = Math.min(length, content.length - at);
            System.arraycopy(content, at, buffer, offset, count);
            at += count;
            return count;
        }

        private boolean isExhausted() {
            if (at == content.length && toCome > 0) {
                content = next();
                toCome -= content.length;
                at = 0;
            }
            return at == content.length;
        }

        /** A piece that is not there is a fault, never the end of the file. */
        private byte[] next() {
            return jdbc.sql("select content from ledger_import_file where import_id = ? and piece = ?")
                    .params(importId, piece++).query((row, n) -> row.getBytes(1)).single();
        }
    }
}
