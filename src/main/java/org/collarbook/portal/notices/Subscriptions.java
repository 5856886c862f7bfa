package org.collarbook.portal.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.collarbook.portal.notices.Subscription.Made;
import org.collarbook.portal.notices.Subscription.Status;
import org.collarbook.portal.notices.Subscription.Wanted;
import org.collarbook.portal.notices.WriteNotices.Written;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Who is told of changes, where, and with what secrets. Another customer's do not exist for the caller. */
@Component
class Subscriptions {

    private static final int MOST = 10;

    private static final String SELECT = """
            select s.*, (select count(*) from notice n where n.subscription_id = s.id and n.status = 'PENDING') as waiting
            from notice_subscription s where s.status <> 'ENDED' and""";

    private final JdbcClient jdbc;
    private final SeenContainers seen;
    private final NoticeQueue queue;
    private final WriteNotices notices;
    private final Clock clock;

    Subscriptions(JdbcClient jdbc, SeenContainers seen, NoticeQueue queue, WriteNotices notices, Clock clock) {
        this.jdbc = jdbc;
        this.seen = seen;
        this.queue = queue;
        this.notices = notices;
        this.clock = clock;
    }

    @Transactional
    public Made make(CustomerId customer, Wanted wanted, Caller by) {
        // first, so that what is noted is what the transactions that it waited for have left
        seen.holdStill();
        require(customer, by.scope());
        long before = jdbc.sql("select count(*) from notice_subscription where customer_id = ? and status <> 'ENDED'")
                .param(customer.value()).query(Long.class).single();
        if (before >= MOST) {
            throw Problem.conflict("TOO_MANY_SUBSCRIPTIONS", "A customer has at most " + MOST
                    + " subscriptions: delete one first.").asException();
        }
        var id = insert(customer, wanted, by.id());
        var secret = addSecret(id);
        if (before == 0) {
            seen.noteAll(customer.value());
        }
        return new Made(require(id, by.scope()), secret.text());
    }

    private UUID insert(CustomerId customer, Wanted wanted, UUID by) {
        var id = Ids.next();
        var lead = wanted.lead();
        jdbc.sql("""
                insert into notice_subscription (id, customer_id, url, kinds, lead, lead_unit, status_since, created_at,
                    created_by) values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(id, customer.value(), wanted.url(),
                        wanted.kinds().stream().map(Enum::name).toArray(String[]::new),
                        lead == null ? null : lead.count(), lead == null ? null : lead.unit().name(), now(), now(), by)
                .update();
        jdbc.sql("insert into notice_turn (subscription_id) values (?)").param(id).update();
        jdbc.sql("insert into notice_scan (subscription_id) values (?)").param(id).update();
        return id;
    }

    private Secret addSecret(UUID id) {
        var secret = Secret.generate();
        jdbc.sql("insert into notice_secret (subscription_id, secret, created_at) values (?, ?, ?)")
                .params(id, secret.bytes(), now()).update();
        return secret;
    }

    List<Subscription> of(CustomerId customer, CustomerScope scope) {
        require(customer, scope);
        return jdbc.sql(SELECT + " s.customer_id = ? order by s.id").param(customer.value()).query(Subscriptions::read)
                .list();
    }

    Subscription require(UUID id, CustomerScope scope) {
        return jdbc.sql(SELECT + " s.id = ?").param(id).query(Subscriptions::read).optional()
                .filter(found -> covers(scope, found.customerId()))
                .orElseThrow(() -> Problem.notFound("subscription").asException());
    }

    /** A subscription is of all sites of the customer: a key that is confined to some has none. */
    private static boolean covers(CustomerScope scope, UUID customer) {
        return switch (scope) {
            case CustomerScope.Everyone _ -> true;
            case CustomerScope.Only(var own, var sites) -> sites == null && own.value().equals(customer);
        };
    }

    private void require(CustomerId customer, CustomerScope scope) {
        if (!covers(scope, customer.value()) || !jdbc.sql("select exists (select from customer where id = ?)")
                .param(customer.value()).query(Boolean.class).single()) {
            throw Problem.notFound("customer").asException();
        }
    }

    /** The new secret signs at once, beside the one of before until that overlap is over; an older one ends now. */
    @Transactional
    public Made rotate(UUID id, Duration overlap, CustomerScope scope) {
        lock(id, scope);
        jdbc.sql("delete from notice_secret where subscription_id = ? and valid_until is not null").param(id).update();
        if (overlap.isZero()) {
            jdbc.sql("delete from notice_secret where subscription_id = ?").param(id).update();
        } else {
            jdbc.sql("update notice_secret set valid_until = ? where subscription_id = ?")
                    .params(clock.instant().plus(overlap).atOffset(ZoneOffset.UTC), id).update();
        }
        return new Made(require(id, scope), addSecret(id).text());
    }

    @Transactional
    public Subscription pause(UUID id, CustomerScope scope) {
        if (lock(id, scope).status() == Status.SWITCHED_OFF) {
            throw notActive().asException();
        }
        return become(id, Status.PAUSED, scope);
    }

    /** Of one that was switched off, what changed meanwhile was not written. */
    @Transactional
    public Subscription resume(UUID id, CustomerScope scope) {
        lock(id, scope);
        queue.wake(id);
        return become(id, Status.ACTIVE, scope);
    }

    private Subscription become(UUID id, Status status, CustomerScope scope) {
        jdbc.sql("update notice_subscription set status = ?, status_since = ? where id = ? and status <> ?")
                .params(status.name(), now(), id, status.name()).update();
        return require(id, scope);
    }

    @Transactional
    public void end(UUID id, CustomerScope scope) {
        var ended = lock(id, scope);
        jdbc.sql("update notice_subscription set status = 'ENDED', status_since = ? where id = ?").params(now(), id)
                .update();
        jdbc.sql("delete from notice_secret where subscription_id = ?").param(id).update();
        jdbc.sql("delete from notice_due_told where subscription_id = ?").param(id).update();
        queue.giveUp(id);
        if (of(new CustomerId(ended.customerId()), scope).isEmpty()) {
            seen.forget(ended.customerId());
        }
    }

    /** The id of a notice that tells nothing but that the endpoint is reached. */
    @Transactional
    public UUID test(UUID id, CustomerScope scope) {
        requireActive(id, scope);
        var notice = Ids.next();
        notices.write(List.of(new Written(id, null, NoticeBody.test(notice, clock.instant()))));
        queue.wake(id);
        return notice;
    }

    /** Refuses one that nothing is sent to. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void requireActive(UUID id, CustomerScope scope) {
        if (lock(id, scope).status() != Status.ACTIVE) {
            throw notActive().asException();
        }
    }

    private static Problem notActive() {
        return Problem.conflict("SUBSCRIPTION_NOT_ACTIVE",
                "The subscription is paused, or was switched off by its endpoint: resume it first.");
    }

    private Subscription lock(UUID id, CustomerScope scope) {
        jdbc.sql("select id from notice_subscription where id = ? for no key update").param(id).query(UUID.class)
                .optional();
        return require(id, scope);
    }

    private static Subscription read(ResultSet row, int number) throws SQLException {
        return new Subscription(row.getObject("id", UUID.class), row.getObject("customer_id", UUID.class),
                row.getString("url"), WriteNotices.kinds((String[]) row.getArray("kinds").getArray()), lead(row),
                Status.valueOf(row.getString("status")), StoredMoment.of(row, "status_since"),
                StoredMoment.of(row, "created_at"),
                row.getLong("waiting"));
    }

    private static Lead.@Nullable Asked lead(ResultSet row) throws SQLException {
        var unit = row.getString("lead_unit");
        return unit == null ? null : new Lead(row.getInt("lead"), Lead.Unit.valueOf(unit)).shown();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
