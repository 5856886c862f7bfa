package org.collarbook.platform;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.SQLException;

import javax.sql.DataSource;

import org.postgresql.PGConnection;
import org.springframework.jdbc.datasource.DataSourceUtils;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

import com.zaxxer.hikari.HikariDataSource;

/**
 * Streams the rows of a query by {@code COPY}, in the running transaction if there is one: one statement, so one
 * snapshot, and nothing kept in memory.
 */
@Component
public class BulkCopyOut {

    private static final int BUFFER = 1 << 16;

    private final DataSource source;
    private final HikariDataSource pool;

    BulkCopyOut(DataSource source) throws SQLException {
        this.source = source;
        this.pool = source.unwrap(HikariDataSource.class);
    }

    /**
     * How many rows there were. A reader that goes away makes the driver cancel the statement, and the cancellation can arrive after it and hit
     * whatever runs next; such a connection is not given to anybody else.
     */
    public long write(String copy, OutputStream out) throws SQLException, IOException {
        if (TransactionSynchronizationManager.isActualTransactionActive()) {
            var connection = DataSourceUtils.getConnection(source);
            try {
                execute(connection, "select " + Unhurried.SETTING);
                return write(copy, out, connection);
            } finally {
                DataSourceUtils.releaseConnection(connection, source);
            }
        }
        try (var connection = pool.getConnection()) {
            execute(connection, "set statement_timeout = 0");
            long rows = write(copy, out, connection);
            execute(connection, "reset statement_timeout");
            return rows;
        }
    }

    /** As long as somebody reads. */
    private static void execute(Connection connection, String setting) throws SQLException {
        try (var statement = connection.createStatement()) {
            statement.execute(setting);
        }
    }

    private long write(String copy, OutputStream out, Connection connection) throws SQLException, IOException {
        boolean whole = false;
        try {
            // the driver hands over row by row
            var buffered = new BufferedOutputStream(out, BUFFER);
            long rows = connection.unwrap(PGConnection.class).getCopyAPI().copyOut(copy, buffered);
            buffered.flush();
            whole = true;
            return rows;
        } finally {
            if (!whole) {
                pool.evictConnection(connection);
            }
        }
    }
}
