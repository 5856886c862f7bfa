package org.collarbook.platform;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.sql.SQLException;

import javax.sql.DataSource;

import org.postgresql.PGConnection;
import org.springframework.stereotype.Component;

import com.zaxxer.hikari.HikariDataSource;

/** Streams the rows of a query by {@code COPY}: one statement, so one snapshot, and nothing kept in memory. */
@Component
public class BulkCopyOut {

    private static final int BUFFER = 1 << 16;

    private final HikariDataSource source;

    BulkCopyOut(DataSource source) throws SQLException {
        this.source = source.unwrap(HikariDataSource.class);
    }

    /**
     * A reader that goes away makes the driver cancel the statement, and the cancellation can arrive after it and hit
     * whatever runs next; such a connection is not given to anybody else.
     */
    public void write(String copy, OutputStream out) throws SQLException, IOException {
        try (var connection = source.getConnection()) {
            boolean whole = false;
            try {
                // the driver hands over row by row
                var buffered = new BufferedOutputStream(out, BUFFER);
                connection.unwrap(PGConnection.class).getCopyAPI().copyOut(copy, buffered);
                buffered.flush();
                whole = true;
            } finally {
                if (!whole) {
                    source.evictConnection(connection);
                }
            }
        }
    }
}
