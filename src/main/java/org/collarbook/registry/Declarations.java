package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What was declared, by whom and when; facts, so never changed. */
@Component
public class Declarations {

    private final JdbcClient jdbc;

    Declarations(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public void add(Declaration said, UUID by) {
        jdbc.sql("""
                insert into declaration (id, declared_by, declared_on, statement, jurisdiction, coated, lading,
                    exclusive, corrosion_free, marks_legible, owned, owner_consent, rin_seen, bare_month_method,
                    blank_means_none, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(said.id(), said.declaredBy(), said.declaredOn(), said.statement(), text(said.jurisdiction()),
                        said.coated(), text(said.lading()), said.exclusive(), said.corrosionFree(),
                        said.marksLegible(), said.owned(), said.ownerConsent(), said.rinSeen(),
                        text(said.bareMonthMethod()), said.blankMeansNone(), by)
                .update();
    }

    /** Those of them that are not on record, in one statement. */
    public void addUnknown(Collection<Declaration> said, UUID by) {
        jdbc.sql("""
                insert into declaration (id, declared_by, declared_on, statement, jurisdiction, coated, lading,
                    exclusive, corrosion_free, marks_legible, owned, owner_consent, rin_seen, bare_month_method,
                    blank_means_none, recorded_by)
                select g.*, ? from unnest(?::uuid[], ?::text[], ?::date[], ?::text[], ?::text[], ?::boolean[],
                    ?::text[], ?::boolean[], ?::boolean[], ?::boolean[], ?::boolean[], ?::boolean[], ?::boolean[],
                    ?::text[], ?::boolean[]) as g
                on conflict do nothing""")
                .params(List.of(by, said.stream().map(Declaration::id).toArray(UUID[]::new),
                        texts(said, Declaration::declaredBy), texts(said, Declaration::declaredOn),
                        texts(said, Declaration::statement), texts(said, Declaration::jurisdiction),
                        texts(said, Declaration::coated), texts(said, Declaration::lading),
                        texts(said, Declaration::exclusive), texts(said, Declaration::corrosionFree),
                        texts(said, Declaration::marksLegible), texts(said, Declaration::owned),
                        texts(said, Declaration::ownerConsent), texts(said, Declaration::rinSeen),
                        texts(said, Declaration::bareMonthMethod), texts(said, Declaration::blankMeansNone)))
                .update();
    }

    private static @Nullable String[] texts(Collection<Declaration> said,
            Function<Declaration, @Nullable Object> part) {
        return said.stream().map(one -> text(part.apply(one))).toArray(String[]::new);
    }

    public Optional<Declaration> find(UUID id) {
        return jdbc.sql("select * from declaration where id = ?").param(id).query(Declarations::read).optional();
    }

    /** Of the columns of the table. */
    public static Declaration read(ResultSet row, int number) throws SQLException {
        var jurisdiction = row.getString("jurisdiction");
        var lading = row.getString("lading");
        var method = row.getString("bare_month_method");
        return new Declaration(row.getObject("id", UUID.class), row.getString("declared_by"),
                row.getObject("declared_on", LocalDate.class), row.getString("statement"),
                jurisdiction == null ? null : new Jurisdiction(jurisdiction), truth(row, "coated"),
                lading == null ? null : new Lading(lading), truth(row, "exclusive"), truth(row, "corrosion_free"),
                truth(row, "marks_legible"), truth(row, "owned"), truth(row, "owner_consent"), truth(row, "rin_seen"),
                method == null ? null : Method.valueOf(method), truth(row, "blank_means_none"));
    }

    private static @Nullable Boolean truth(ResultSet row, String column) throws SQLException {
        return row.getObject(column, Boolean.class);
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }
}
