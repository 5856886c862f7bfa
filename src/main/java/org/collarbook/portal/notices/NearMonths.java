package org.collarbook.portal.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Requirement;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The due months that are near for a subscription, and which of them it was told. */
@Component
class NearMonths {

    /** Those near on the site's own day, unless they were told; what is out for good falls due no more. */
    private static final String NEAR = """
            from requirement r join site s on s.id = r.site_id join container c on c.id = r.container_id
            join notice_seen v on v.container_id = r.container_id and v.customer_id = r.customer_id
              and v.site_id = r.site_id
            left join notice_due_told t on t.subscription_id = :subscription and t.container_id = r.container_id
              and t.requirement = r.requirement and t.jurisdiction = r.jurisdiction
            where r.customer_id = :customer and r.due is not null
              and notice_due_from(r.due, :lead, :unit) <= (:now at time zone s.zone)::date
              and t.due is distinct from r.due
              and not exists (select from requirement d where d.container_id = r.container_id and d.decisive
                and d.standing in ('CONDEMNED', 'REJECTED'))""";

    /**
     * Whoever tells a change of a container holds its row of what was seen until that is committed, so that notices of one
     * container are numbered as things came about; a merge holds the container itself first. What is held is passed over:
     * a ledger holds many for minutes.
     */
    private static final String FREE = "select r.container_id " + NEAR + " order by r.container_id limit :chunk"
            + " for no key update of v skip locked for key share of c skip locked";

    private static final String THESE = "select r.container_id, r.requirement, r.jurisdiction, r.due, r.site_id " + NEAR
            + " and r.container_id = any (:free) order by r.container_id, r.requirement, r.jurisdiction";

    /** Whose months are looked at, and how far ahead. */
    record Scan(UUID subscription, UUID customer, Lead lead) {}

    record Near(UUID container, Requirement requirement, String jurisdiction, YearMonth due, UUID site) {}

    private final JdbcClient jdbc;

    NearMonths(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A due month that moved may come near once more. */
    void forgetMoved(Scan scan) {
        jdbc.sql("""
                delete from notice_due_told t where t.subscription_id = ? and not exists (
                  select from requirement r where r.container_id = t.container_id and r.requirement = t.requirement
                    and r.jurisdiction = t.jurisdiction and r.due = t.due)""").param(scan.subscription).update();
    }

    /** Those of some containers that nobody else is at, which stay so until the transaction ends. */
    List<Near> next(Scan scan, OffsetDateTime now, int atMost) {
        var free = asked(scan, now, FREE).param("chunk", atMost).query(UUID.class).list();
        // a statement of its own: it sees whatever was committed before they were had
        return asked(scan, now, THESE).param("free", free.toArray(UUID[]::new))
                .query((row, number) -> near(row)).list();
    }

    /** Whether something is near and was not told yet. */
    boolean any(Scan scan, OffsetDateTime now) {
        return asked(scan, now, "select exists (select " + NEAR + ")").query(Boolean.class).single();
    }

    private JdbcClient.StatementSpec asked(Scan scan, OffsetDateTime now, String sql) {
        return jdbc.sql(sql).param("subscription", scan.subscription).param("customer", scan.customer)
                .param("lead", scan.lead.count()).param("unit", scan.lead.unit().name()).param("now", now);
    }

    private static Near near(ResultSet row) throws SQLException {
        return new Near(row.getObject("container_id", UUID.class), Requirement.valueOf(row.getString("requirement")),
                row.getString("jurisdiction"), YearMonth.from(row.getDate("due").toLocalDate()),
                row.getObject("site_id", UUID.class));
    }

    void note(Scan scan, List<Near> near) {
        jdbc.sql("""
                insert into notice_due_told (subscription_id, container_id, requirement, jurisdiction, due)
                select :subscription, * from unnest(:containers::uuid[], :requirements::text[], :jurisdictions::text[],
                    :due::date[])""").param("subscription", scan.subscription)
                .param("containers", near.stream().map(Near::container).toArray(UUID[]::new))
                .param("requirements", near.stream().map(one -> one.requirement.name()).toArray(String[]::new))
                .param("jurisdictions", near.stream().map(Near::jurisdiction).toArray(String[]::new))
                .param("due", near.stream().map(one -> one.due.atDay(1).toString()).toArray(String[]::new)).update();
    }
}
