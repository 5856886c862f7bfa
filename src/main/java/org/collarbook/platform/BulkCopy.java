package org.collarbook.platform;

import java.sql.SQLException;
import java.util.function.Function;

import javax.sql.DataSource;

import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.UncategorizedSQLException;
import org.springframework.jdbc.datasource.DataSourceUtils;
import org.springframework.jdbc.support.SQLExceptionSubclassTranslator;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Writes many rows by {@code COPY} on the connection of the running transaction. */
@Component
public class BulkCopy {

    private static final int PIECE = 1 << 16;

    private final DataSource source;

    BulkCopy(DataSource source) {
        this.source = source;
    }

    /**
     * @param target table and columns, as in {@code "movement (id, container_id)"}
     * @param values what stands in those columns; texts, numbers, dates, ids and booleans, null for unknown
     */
    public <T> long into(String target, Iterable<T> rows, Function<T, @Nullable Object[]> values) {
        if (!TransactionSynchronizationManager.isActualTransactionActive()) {
            throw new IllegalStateException("rows are copied into " + target + " outside a transaction");
        }
        var connection = DataSourceUtils.getConnection(source);
        try {
            var copy = connection.unwrap(PGConnection.class).getCopyAPI().copyIn("copy " + target + " from stdin");
            try {
                var piece = new CopyText();
                for (T row : rows) {
                    piece.row(values.apply(row));
                    if (piece.length() >= PIECE) {
                        send(copy, piece);
                        piece.clear();
                    }
                }
                send(copy, piece);
                return copy.endCopy();
            } finally {
                if (copy.isActive()) {
                    copy.cancelCopy();
                }
            }
        } catch (SQLException e) {
            throw translated(target, e);
        } finally {
            DataSourceUtils.releaseConnection(connection, source);
        }
    }

    private static void send(CopyIn copy, CopyText piece) throws SQLException {
        copy.writeToCopy(piece.bytes(), 0, piece.length());
    }

    /** Class 23 of the SQLSTATEs is an integrity constraint violation. */
    private static DataAccessException translated(String target, SQLException e) {
        var state = e.getSQLState();
        if (state != null && state.startsWith("23")) {
            return new DataIntegrityViolationException("a copied row was refused", e);
        }
        var translated = new SQLExceptionSubclassTranslator().translate("copy", target, e);
        return translated == null ? new UncategorizedSQLException("copy", target, e) : translated;
    }
}
