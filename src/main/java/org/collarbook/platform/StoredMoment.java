package org.collarbook.platform;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;

import org.jspecify.annotations.Nullable;

/** A moment as a row has it: PostgreSQL's driver reads a {@code timestamptz} as a time with an offset, not as an instant. */
public final class StoredMoment {

    private StoredMoment() {}

    public static Instant of(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }

    public static @Nullable Instant orNull(ResultSet row, String column) throws SQLException {
        var at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
