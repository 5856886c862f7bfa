package org.collarbook.portal.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Ids;
import org.collarbook.portal.notices.DescribedContainers.Description;
import org.collarbook.portal.notices.WriteNotices.Written;
import org.collarbook.regulation.Requirement;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Tells the due months that have come near, hour by hour, since a day begins at one site after the other. What was told
 * is kept with the notices that tell it, in short transactions: a killed scan goes on where it stopped, and one after
 * days of standing still tells what came near meanwhile. Of several services, one scans a subscription at a time.
 */
@Component
class TellDueSoon {

    private static final int CHUNK = 500;

    /** Those near on the site's own day, unless they were told; what is out for good falls due no more. */
    private static final String NEAR = """
            select r.container_id, r.requirement, r.jurisdiction, r.due, r.site_id
            from requirement r join site s on s.id = r.site_id
            left join notice_due_told t on t.subscription_id = :subscription and t.container_id = r.container_id
              and t.requirement = r.requirement and t.jurisdiction = r.jurisdiction
            where r.customer_id = :customer and r.due is not null
              and notice_due_from(r.due, :lead, :unit) <= (:now at time zone s.zone)::date
              and t.due is distinct from r.due
              and not exists (select from requirement d where d.container_id = r.container_id and d.decisive
                and d.standing in ('CONDEMNED', 'REJECTED'))
            order by r.container_id, r.requirement, r.jurisdiction limit :chunk""";

    private record Scan(UUID subscription, UUID customer, Lead lead) {}

    private record Near(UUID container, Requirement requirement, String jurisdiction, YearMonth due, UUID site) {}

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final WriteNotices notices;
    private final DescribedContainers containers;
    private final Clock clock;

    TellDueSoon(JdbcClient jdbc, TransactionTemplate transaction, WriteNotices notices, DescribedContainers containers,
            Clock clock) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.notices = notices;
        this.containers = containers;
        this.clock = clock;
    }

    void scan() {
        while (Boolean.TRUE.equals(transaction.execute(status -> chunk()))) {
            // the next one
        }
    }

    /** Whether there may be more to scan. */
    private boolean chunk() {
        var now = clock.instant().atOffset(ZoneOffset.UTC);
        var hour = now.truncatedTo(ChronoUnit.HOURS);
        return claim(hour).map(scan -> {
            forgetMoved(scan);
            var near = near(scan, now);
            tell(scan, near);
            if (near.size() < CHUNK) {
                jdbc.sql("update notice_scan set scanned_through = ? where subscription_id = ?")
                        .params(hour, scan.subscription).update();
            }
            return true;
        }).orElse(false);
    }

    private Optional<Scan> claim(OffsetDateTime hour) {
        return jdbc.sql("""
                select s.id, s.customer_id, s.lead, s.lead_unit from notice_scan c
                join notice_subscription s on s.id = c.subscription_id
                where c.scanned_through < ? and s.lead is not null and s.status in ('ACTIVE', 'PAUSED')
                order by c.scanned_through, s.id limit 1 for no key update of c skip locked""").param(hour)
                .query((row, number) -> new Scan(row.getObject("id", UUID.class),
                        row.getObject("customer_id", UUID.class),
                        new Lead(row.getInt("lead"), Lead.Unit.valueOf(row.getString("lead_unit")))))
                .optional();
    }

    /** A due month that moved may come near once more. */
    private void forgetMoved(Scan scan) {
        jdbc.sql("""
                delete from notice_due_told t where t.subscription_id = ? and not exists (
                  select from requirement r where r.container_id = t.container_id and r.requirement = t.requirement
                    and r.jurisdiction = t.jurisdiction and r.due = t.due)""").param(scan.subscription).update();
    }

    private List<Near> near(Scan scan, OffsetDateTime now) {
        return jdbc.sql(NEAR).param("subscription", scan.subscription).param("customer", scan.customer)
                .param("lead", scan.lead.count()).param("unit", scan.lead.unit().name()).param("now", now)
                .param("chunk", CHUNK).query((row, number) -> near(row)).list();
    }

    private static Near near(ResultSet row) throws SQLException {
        return new Near(row.getObject("container_id", UUID.class), Requirement.valueOf(row.getString("requirement")),
                row.getString("jurisdiction"), YearMonth.from(row.getDate("due").toLocalDate()),
                row.getObject("site_id", UUID.class));
    }

    private void tell(Scan scan, List<Near> found) {
        var described = containers.read(found.stream().map(Near::container).collect(Collectors.toSet()));
        // what was moved since it was found is told by where it went
        var near = found.stream().filter(one -> one.site.equals(of(one, described).site())).toList();
        if (near.isEmpty()) {
            return;
        }
        note(scan, near);
        var sites = notices.sites(near.stream().map(Near::site).collect(Collectors.toSet()), scan.customer);
        var at = clock.instant();
        notices.write(near.stream().map(one -> new Written(scan.subscription, one.container,
                new NoticeBody(NoticeBody.VERSION, Ids.next(), NoticeType.DUE_SOON.word(), at,
                        of(one, described).identity(), sites.get(one.site), null, of(one, described).status(),
                        words(one), one.requirement, one.due, one.due.atEndOfMonth())))
                .toList());
    }

    private static Description of(Near near, Map<UUID, Description> described) {
        return Objects.requireNonNull(described.get(near.container), "no container " + near.container);
    }

    private void note(Scan scan, List<Near> near) {
        jdbc.sql("""
                insert into notice_due_told (subscription_id, container_id, requirement, jurisdiction, due)
                select :subscription, * from unnest(:containers::uuid[], :requirements::text[], :jurisdictions::text[],
                    :due::date[])""").param("subscription", scan.subscription)
                .param("containers", near.stream().map(Near::container).toArray(UUID[]::new))
                .param("requirements", near.stream().map(one -> one.requirement.name()).toArray(String[]::new))
                .param("jurisdictions", near.stream().map(Near::jurisdiction).toArray(String[]::new))
                .param("due", near.stream().map(one -> one.due.atDay(1).toString()).toArray(String[]::new)).update();
    }

    /** Such as "Its shell requirement is due by the end of December 2026." */
    private static String words(Near near) {
        return "Its requirement " + near.requirement.name().replace('_', ' ').toLowerCase(Locale.ROOT)
                + " is due by the end of " + near.due.getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " "
                + near.due.format(DateTimeFormatter.ofPattern("yyyy", Locale.ENGLISH)) + ".";
    }
}
