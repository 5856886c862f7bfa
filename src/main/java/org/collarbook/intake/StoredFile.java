package org.collarbook.intake;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.UUID;

import org.collarbook.platform.Pieces;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger's text as it is kept: in pieces, so that neither end of the service holds the whole file. */
final class StoredFile {

    private StoredFile() {}

    static Pieces read(JdbcClient jdbc, UUID importId) {
        return new Pieces(piece -> jdbc.sql("select content from ledger_import_file where import_id = ? and piece = ?")
                .params(importId, piece).query((row, n) -> row.getBytes(1)).single(),
                jdbc.sql("select coalesce(text_bytes, bytes) from ledger_import where id = ?").param(importId)
                        .query(Long.class).single());
    }

    /** A text on its way in: what is read of it is stored. */
    static final class Storing extends FilterInputStream {

        private final JdbcClient jdbc;
        private final UUID importId;
        private final byte[] content = new byte[Pieces.SIZE];
        private int filled;
        private int piece;
        private long bytes;

        Storing(JdbcClient jdbc, UUID importId, InputStream file) {
            super(file);
            this.jdbc = jdbc;
            this.importId = importId;
        }

        @Override
        public int read() throws IOException {
            var one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int count = super.read(buffer, offset, Math.min(length, Pieces.SIZE - filled));
            if (count > 0) {
                System.arraycopy(buffer, offset, content, filled, count);
                filled += count;
                if (filled == Pieces.SIZE) {
                    store();
                }
            }
            return count;
        }

        private void store() {
            bytes += filled;
            jdbc.sql("insert into ledger_import_file (import_id, piece, content) values (?, ?, ?)")
                    .params(importId, piece++, Arrays.copyOf(content, filled)).update();
            filled = 0;
        }

        /** How many bytes were stored, once the file was read to its end. */
        long stored() {
            if (filled > 0) {
                store();
            }
            return bytes;
        }
    }
}
