package org.collarbook.intake;

import java.io.IOException;
import java.io.InputStream;
import java.util.HexFormat;
import java.util.UUID;

import org.collarbook.platform.Pieces;
import org.collarbook.platform.Sha256;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger's bytes as they are kept: in pieces, so that neither end of the service holds the whole file. */
final class StoredFile {

    /** How long the file is, and its digest. */
    record Stored(long bytes, String sha256) {}

    private StoredFile() {}

    static Stored write(JdbcClient jdbc, UUID importId, InputStream file) throws IOException {
        var digest = Sha256.start();
        long bytes = 0;
        int piece = 0;
        for (var content = file.readNBytes(Pieces.SIZE); content.length > 0; content = file.readNBytes(Pieces.SIZE)) {
            digest.update(content);
            bytes += content.length;
            jdbc.sql("insert into ledger_import_file (import_id, piece, content) values (?, ?, ?)")
                    .params(importId, piece++, content).update();
        }
        return new Stored(bytes, HexFormat.of().formatHex(digest.digest()));
    }

    static InputStream read(JdbcClient jdbc, UUID importId) {
        return new Pieces(piece -> jdbc.sql("select content from ledger_import_file where import_id = ? and piece = ?")
                .params(importId, piece).query((row, n) -> row.getBytes(1)).single(),
                jdbc.sql("select bytes from ledger_import where id = ?").param(importId).query(Long.class).single());
    }
}
