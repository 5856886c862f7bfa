package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.regulation.Lading;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The products that are filled in. */
@Component
public class Products {

    private static final String SELECT = "select id, version, code, lading, specific_gravity, declared_by, declared_on"
            + " from product ";

    private final JdbcClient jdbc;
    private final Clock clock;

    Products(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional
    public Product declare(ProductContent content) {
        var id = Ids.next();
        write(content, "insert into product (code, lading, specific_gravity, declared_by, declared_on, id, created_at)"
                + " values (?, ?, ?, ?, ?, ?, ?)", id, clock.instant().atOffset(ZoneOffset.UTC));
        return find(id).orElseThrow();
    }

    /** Refuses by problem: not found, a missing or stale {@code If-Match}, a code that another product has. */
    @Transactional
    public Product change(UUID id, @Nullable String ifMatch, ProductContent content) {
        var before = jdbc.sql(SELECT + "where id = ? for no key update").param(id).query(Products::read).optional()
                .orElseThrow(() -> Problem.notFound("product").asException());
        new Revision(before.version()).requireMatch(ifMatch);
        write(content, "update product set code = ?, lading = ?, specific_gravity = ?, declared_by = ?,"
                + " declared_on = ?, version = version + 1 where id = ?", id);
        return find(id).orElseThrow();
    }

    private void write(ProductContent content, String statement, Object... more) {
        try {
            jdbc.sql(statement).params(content.code(), content.lading().name(), content.specificGravity(),
                    content.declaredBy(), content.declaredOn()).params(more).update();
        } catch (DataIntegrityViolationException taken) {
            throw Codes.taken(taken, "product_code", "product", content.code());
        }
    }

    public Optional<Product> find(UUID id) {
        return jdbc.sql(SELECT + "where id = ?").param(id).query(Products::read).optional();
    }

    public Optional<Product> byCode(String code) {
        return jdbc.sql(SELECT + "where code = ?").param(code).query(Products::read).optional();
    }

    public Page<Product> page(@Nullable UUID after, PageSize size) {
        var read = jdbc.sql(SELECT + PlaceRows.AFTER).params(after, size.limit()).query(Products::read).list();
        return Page.of(read, size, product -> Cursor.after(product.id()));
    }

    private static Product read(ResultSet row, int number) throws SQLException {
        return new Product(row.getObject("id", UUID.class), row.getInt("version"), row.getString("code"),
                new Lading(row.getString("lading")), row.getBigDecimal("specific_gravity").stripTrailingZeros(),
                row.getString("declared_by"), row.getObject("declared_on", LocalDate.class));
    }
}
