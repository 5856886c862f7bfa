package org.collarbook.portal.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.platform.Problem;
import org.collarbook.portal.notices.Change.Seen;
import org.collarbook.portal.notices.Change.Word;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.UncategorizedSQLException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** How the containers of customers who are told of changes were last seen; see the migration for the lock. */
@Component
class SeenContainers {

    private static final String PATIENCE = "3s";
    /** Of PostgreSQL's list of error codes. */
    private static final String LOCK_NOT_AVAILABLE = "55P03";

    private final JdbcClient jdbc;

    SeenContainers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Whether anybody is told of anything. */
    boolean areWatched() {
        return jdbc.sql("select notices_are_asked_for()").query(Boolean.class).single();
    }

    /**
     * Waits for every transaction that is changing containers, and keeps others waiting until this one is over; so it
     * waits for seconds only, and asks the caller to come again when a long one is under way.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void holdStill() {
        jdbc.sql("select set_config('lock_timeout', ?, true)").param(PATIENCE).query(String.class).single();
        try {
            jdbc.sql("select pg_advisory_xact_lock(hashtextextended('notice_subscription', 0))").query(String.class)
                    .optional();
        } catch (UncategorizedSQLException failed) {
            if (!LOCK_NOT_AVAILABLE.equals(failed.getSQLException().getSQLState())) {
                throw failed;
            }
            throw Problem.of(HttpStatus.SERVICE_UNAVAILABLE, "BUSY", "Many containers are being changed just now."
                    + " Nothing of this request was stored: repeat it.").asException();
        }
    }

    /** Notes how a customer's containers stand now, so that the next change of each is told. */
    void noteAll(UUID customer) {
        forget(customer);
        jdbc.sql("""
                insert into notice_seen (container_id, customer_id, site_id, word)
                select container_id, customer_id, site_id, notice_word(standing) from requirement
                where decisive and customer_id = ?
                on conflict (container_id) do update set customer_id = excluded.customer_id,
                    site_id = excluded.site_id, word = excluded.word""").param(customer).update();
    }

    void forget(UUID customer) {
        jdbc.sql("delete from notice_seen where customer_id = ?").param(customer).update();
    }

    /** What is different of these containers, which from now on counts as seen. */
    List<Change> takeChanges(UUID[] ids) {
        var changes = jdbc.sql("""
                with now as (
                  select r.container_id, r.customer_id, r.site_id, notice_word(r.standing) as word from requirement r
                  where r.container_id = any (:ids) and r.decisive and exists (
                    select from notice_subscription s where s.customer_id = r.customer_id and s.status <> 'ENDED')),
                seen as (select * from notice_seen where container_id = any (:ids))
                select coalesce(n.container_id, s.container_id) as container_id,
                  s.customer_id as was_customer, s.site_id as was_site, s.word as was_word,
                  n.customer_id as is_customer, n.site_id as is_site, n.word as is_word
                from now n full join seen s on s.container_id = n.container_id
                where (n.customer_id, n.site_id, n.word) is distinct from (s.customer_id, s.site_id, s.word)
                order by container_id""").param("ids", ids)
                .query((row, number) -> new Change(row.getObject("container_id", UUID.class), seen(row, "was"),
                        seen(row, "is")))
                .list();
        note(changes);
        return changes;
    }

    private static @Nullable Seen seen(ResultSet row, String when) throws SQLException {
        var customer = row.getObject(when + "_customer", UUID.class);
        return customer == null
                ? null
                : new Seen(customer, row.getObject(when + "_site", UUID.class),
                        Word.valueOf(row.getString(when + "_word")));
    }

    private void note(List<Change> changes) {
        var gone = changes.stream().filter(change -> change.after() == null).map(Change::container)
                .toArray(UUID[]::new);
        if (gone.length > 0) {
            jdbc.sql("delete from notice_seen where container_id = any (?)").param(gone).update();
        }
        var here = changes.stream().filter(change -> change.after() != null).toList();
        if (!here.isEmpty()) {
            jdbc.sql("""
                    insert into notice_seen (container_id, customer_id, site_id, word)
                    select * from unnest(:containers::uuid[], :customers::uuid[], :sites::uuid[], :words::text[])
                    on conflict (container_id) do update set customer_id = excluded.customer_id,
                        site_id = excluded.site_id, word = excluded.word""")
                    .param("containers", here.stream().map(Change::container).toArray(UUID[]::new))
                    .param("customers", column(here, Seen::customer)).param("sites", column(here, Seen::site))
                    .param("words", here.stream().map(change -> Objects.requireNonNull(change.after()).word().name())
                            .toArray(String[]::new))
                    .update();
        }
    }

    private static UUID[] column(List<Change> here, Function<Seen, UUID> value) {
        return here.stream().map(change -> value.apply(Objects.requireNonNull(change.after()))).toArray(UUID[]::new);
    }
}
