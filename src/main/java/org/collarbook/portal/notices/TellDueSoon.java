package org.collarbook.portal.notices;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Ids;
import org.collarbook.portal.notices.DescribedContainers.Description;
import org.collarbook.portal.notices.NearMonths.Near;
import org.collarbook.portal.notices.NearMonths.Scan;
import org.collarbook.portal.notices.WriteNotices.Written;
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

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final NearMonths months;
    private final WriteNotices notices;
    private final DescribedContainers containers;
    private final Clock clock;

    TellDueSoon(JdbcClient jdbc, TransactionTemplate transaction, NearMonths months, WriteNotices notices,
            DescribedContainers containers,
            Clock clock) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.months = months;
        this.notices = notices;
        this.containers = containers;
        this.clock = clock;
    }

    void scan() {
        var passedOver = new HashSet<UUID>();
        while (Boolean.TRUE.equals(transaction.execute(status -> chunk(passedOver)))) {
            // the next one
        }
    }

    /** Whether there may be more to scan. What is near and was passed over is left to the next round. */
    private boolean chunk(Set<UUID> passedOver) {
        var now = clock.instant().atOffset(ZoneOffset.UTC);
        var hour = now.truncatedTo(ChronoUnit.HOURS);
        return claim(hour, passedOver).map(scan -> {
            months.forgetMoved(scan);
            var near = months.next(scan, now, CHUNK);
            if (tell(scan, near) == 0 || near.size() < CHUNK) {
                end(scan, now, hour, passedOver);
            }
            return true;
        }).orElse(false);
    }

    private void end(Scan scan, OffsetDateTime now, OffsetDateTime hour, Set<UUID> passedOver) {
        if (months.any(scan, now)) {
            passedOver.add(scan.subscription());
        } else {
            jdbc.sql("update notice_scan set scanned_through = ? where subscription_id = ?")
                    .params(hour, scan.subscription()).update();
        }
    }

    private Optional<Scan> claim(OffsetDateTime hour, Set<UUID> passedOver) {
        return jdbc.sql("""
                select s.id, s.customer_id, s.lead, s.lead_unit from notice_scan c
                join notice_subscription s on s.id = c.subscription_id
                where c.scanned_through < ? and s.lead is not null and s.status in ('ACTIVE', 'PAUSED')
                  and not s.id = any (?)
                order by c.scanned_through, s.id limit 1 for no key update of c skip locked""").param(hour)
                .param(passedOver.toArray(UUID[]::new))
                .query((row, number) -> new Scan(row.getObject("id", UUID.class),
                        row.getObject("customer_id", UUID.class),
                        new Lead(row.getInt("lead"), Lead.Unit.valueOf(row.getString("lead_unit")))))
                .optional();
    }

    /** How many were told. */
    private int tell(Scan scan, List<Near> found) {
        var described = containers.read(found.stream().map(Near::container).collect(Collectors.toSet()));
        // what was moved since it was found is told by where it went
        var near = found.stream().filter(one -> one.site().equals(of(one, described).site())).toList();
        if (near.isEmpty()) {
            return 0;
        }
        months.note(scan, near);
        var sites = notices.sites(near.stream().map(Near::site).collect(Collectors.toSet()), scan.customer());
        var at = clock.instant();
        notices.write(near.stream().map(one -> new Written(scan.subscription(), one.container(),
                new NoticeBody(NoticeBody.VERSION, Ids.next(), NoticeType.DUE_SOON.word(), at,
                        of(one, described).identity(), sites.get(one.site()), null, of(one, described).status(),
                        words(one), one.requirement(), one.due(), one.due().atEndOfMonth())))
                .toList());
        return near.size();
    }

    private static Description of(Near near, Map<UUID, Description> described) {
        return Objects.requireNonNull(described.get(near.container()), "no container " + near.container());
    }

    /** Such as "Its shell requirement is due by the end of December 2026." */
    private static String words(Near near) {
        return "Its requirement " + near.requirement().name().replace('_', ' ').toLowerCase(Locale.ROOT)
                + " is due by the end of " + near.due().getMonth().getDisplayName(TextStyle.FULL, Locale.ENGLISH) + " "
                + near.due().format(DateTimeFormatter.ofPattern("yyyy", Locale.ENGLISH)) + ".";
    }
}
