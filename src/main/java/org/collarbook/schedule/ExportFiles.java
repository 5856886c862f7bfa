package org.collarbook.schedule;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.UUID;

import org.collarbook.platform.Unhurried;
import org.collarbook.platform.Pieces;
import org.collarbook.platform.Sha256;
import org.collarbook.platform.jobs.Claim;
import org.collarbook.schedule.ScheduleExport.FileEntry;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * The files of the exports, kept in pieces, and the keys of their rows. A piece is written in a transaction of its own,
 * beside the one whose snapshot is read, so that what is written does not grow in memory.
 */
@Component
class ExportFiles {

    /** What has expired; and what ended without files, when nobody that was slow can still be writing. */
    private static final String OVER = """
            %1$s_deleted_at is null and (%2$s <= :now
              or status in ('FAILED', 'CANCELLED') and finished_at < cast(:now as timestamptz) - interval '1 hour')""";

    private final JdbcClient jdbc;
    private final Clock clock;
    private final TransactionTemplate apart;

    ExportFiles(JdbcClient jdbc, Clock clock, PlatformTransactionManager transactions) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.apart = new TransactionTemplate(transactions);
        this.apart.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    /** Writes the rows and tells how many there are. */
    interface Writer {

        long write(OutputStream out) throws IOException;
    }

    FileEntry write(Claim claim, String name, String mediaType, Writer writer) {
        try (var file = new Pieced(claim, name)) {
            long rows = writer.write(file);
            return file.end(mediaType, rows);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    InputStream read(UUID export, int attempt, FileEntry file) {
        return new Pieces(piece -> jdbc.sql("select content from schedule_export_piece"
                + " where export_id = ? and attempt = ? and name = ? and piece = ?")
                .params(export, attempt, file.name(), piece).query((row, n) -> row.getBytes(1)).single(), file.bytes());
    }

    /** What attempts before this one have left. */
    void forgetEarlier(Claim claim) {
        apart.executeWithoutResult(status -> {
            Unhurried.go(jdbc);
            jdbc.sql("delete from schedule_export_piece where export_id = ? and attempt < ?")
                    .params(claim.id(), claim.attempt()).update();
            jdbc.sql("delete from schedule_export_key where attempt < ? and export_number = ("
                    + "select number from schedule_export where id = ?)").params(claim.attempt(), claim.id()).update();
        });
    }

    /** Of several services each sweeps what no other one is sweeping; what is deleted is told in the same transaction. */
    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT10M")
    void sweep() {
        sweep("files", "expires_at", "schedule_export_piece where export_id in (select id from swept)");
        sweep("keys", "keys_expire_at", "schedule_export_key where export_number in (select number from swept)");
    }

    private void sweep(String what, String expires, String from) {
        apart.executeWithoutResult(status -> sweepNow(what, expires, from));
    }

    private void sweepNow(String what, String expires, String from) {
        Unhurried.go(jdbc);
        jdbc.sql("""
                with swept as (
                  select id, number from schedule_export where %s for update skip locked),
                gone as (delete from %s)
                update schedule_export set %s_deleted_at = :now where id in (select id from swept)"""
                .formatted(OVER.formatted(what, expires), from, what))
                .param("now", clock.instant().atOffset(ZoneOffset.UTC)).update();
    }

    private final class Pieced extends OutputStream {

        private final Claim claim;
        private final String name;
        private final byte[] buffer = new byte[Pieces.SIZE];
        private final MessageDigest digest = Sha256.start();
        private int filled;
        private int piece;
        private long bytes;

        Pieced(Claim claim, String name) {
            this.claim = claim;
            this.name = name;
        }

        @Override
        public void write(int octet) {
            write(new byte[]{(byte) octet}, 0, 1);
        }

        @Override
        public void write(byte[] from, int offset, int length) {
            for (int done = 0; done < length;) {
                int part = Math.min(length - done, buffer.length - filled);
                System.arraycopy(from, offset + done, buffer, filled, part);
                filled += part;
                done += part;
                if (filled == buffer.length) {
                    store();
                }
            }
        }

        private void store() {
            var content = filled == buffer.length ? buffer : Arrays.copyOf(buffer, filled);
            digest.update(content);
            bytes += filled;
            filled = 0;
            apart.executeWithoutResult(status -> jdbc.sql("insert into schedule_export_piece"
                    + " (export_id, attempt, name, piece, content) values (?, ?, ?, ?, ?)")
                    .params(claim.id(), claim.attempt(), name, piece, content).update());
            piece++;
        }

        FileEntry end(String mediaType, long rows) {
            if (filled > 0) {
                store();
            }
            return new FileEntry(name, mediaType, rows, bytes, HexFormat.of().formatHex(digest.digest()));
        }
    }
}
