package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.UUID;

import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger's text as it is kept: in pieces, so that neither end of the service holds the whole file. */
final class StoredFile {

    private static final int PIECE = 1 << 20;

    private StoredFile() {}

    /** How many bytes there were. */
    static long write(JdbcClient jdbc, UUID importId, InputStream file) throws IOException {
        long bytes = 0;
        int piece = 0;
        for (var content = file.readNBytes(PIECE); content.length > 0; content = file.readNBytes(PIECE)) {
            bytes += content.length;
            jdbc.sql("insert into ledger_import_file (import_id, piece, content) values (?, ?, ?)")
                    .params(importId, piece++, content).update();
        }
        return bytes;
    }

    static InputStream read(JdbcClient jdbc, UUID importId) {
        return new Pieces(jdbc, importId,
                jdbc.sql("select coalesce(text_bytes, bytes) from ledger_import where id = ?").param(importId)
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
