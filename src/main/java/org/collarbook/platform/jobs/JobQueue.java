package org.collarbook.platform.jobs;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Who does which job. A job is claimed for as long as a lease, which is renewed while it is done; when that runs out, as
 * after a kill, the next one claims it anew. Leases go by the database's clock, which all services share. Each claim is
 * another attempt, and only the latest attempt can write.
 *
 * <p>Any table can hold jobs that has the columns {@code id uuid}, {@code number} (the order in which they are taken),
 * {@code status} (of {@link JobStatus}), {@code attempt int}, {@code lease_until}, {@code started_at},
 * {@code finished_at}, {@code failure_code}, {@code failure} and {@code in_vain int}: the attempts since it last got
 * further for good.
 */
public final class JobQueue {

    /** After so many in a row that came to nothing a job is given up: it may be what kills the services. */
    public static final int ATTEMPTS = 3;

    private static final String LEASE = "now() + interval '30 seconds'";
    private static final String OURS = " where id = ? and attempt = ? and status = 'RUNNING'";

    private final JdbcClient jdbc;
    private final Clock clock;
    private final String table;
    private final String which;
    private final Columns afresh;

    /**
     * @param table the jobs' table, a constant of the code
     * @param which a condition on its rows, a constant: where one table holds two kinds
     * @param afresh the columns that tell how far a job is, as they are when it is begun
     */
    public JobQueue(JdbcClient jdbc, Clock clock, String table, String which, Columns afresh) {
        this.jdbc = jdbc;
        this.clock = clock;
        this.table = table;
        this.which = which;
        this.afresh = afresh;
    }

    public JobQueue(JdbcClient jdbc, Clock clock, String table, Columns afresh) {
        this(jdbc, clock, table, "true", afresh);
    }

    public Optional<Claim> claim() {
        jdbc.sql("""
                update %1$s set status = 'FAILED', finished_at = ?, failure_code = 'GIVEN_UP',
                    failure = 'It was begun ' || attempt || ' times and did not come to an end; the last ' || in_vain
                        || ' times came to nothing.'
                where id in (select id from %1$s where status = 'RUNNING' and lease_until < now() and in_vain >= ?
                    and %2$s for update skip locked)""".formatted(table, which)).params(now(), ATTEMPTS).update();
        return jdbc.sql("""
                update %1$s set status = 'RUNNING', attempt = attempt + 1, in_vain = in_vain + 1, started_at = ?,
                    lease_until = %2$s%3$s
                where id = (select id from %1$s where (status = 'QUEUED' or status = 'RUNNING' and lease_until < now())
                    and %4$s order by number limit 1 for update skip locked)
                returning id, attempt""".formatted(table, LEASE, afresh.further(), which))
                .params(behind(afresh, now())).query(Claim.class).optional();
    }

    /** Renews the lease and tells how far it is; false when the job was cancelled or is another's by now. */
    public boolean renew(Claim claim, Columns progress) {
        return ours(claim, "lease_until = " + LEASE, progress);
    }

    /** The same, when what is told is stored for good: another attempt goes on from there. */
    public boolean keep(Claim claim, Columns stored) {
        return ours(claim, "in_vain = 0, lease_until = " + LEASE, stored);
    }

    /**
     * Ends the job with what came of it; false when it was cancelled or is another's by now, and then whoever calls writes
     * nothing. The row stays locked until the transaction ends, so nobody cancels or claims it meanwhile.
     */
    public boolean finish(Claim claim, Columns result) {
        return ours(claim, "status = 'DONE', finished_at = ?", result, now());
    }

    public void fail(Claim claim, String code, @Nullable String detail) {
        ours(claim, "status = 'FAILED', finished_at = ?, failure_code = ?, failure = ?", Columns.NONE, now(), code,
                detail);
    }

    /** Lets another service begin it at once; that this one ends is no fault of the job, so its attempt does not count. */
    void handBack(Claim claim) {
        ours(claim, "status = 'QUEUED', in_vain = greatest(in_vain - 1, 0)", Columns.NONE);
    }

    /** False when it is over already. Whoever is doing it learns of it by the next beat, or when it would write the result. */
    public boolean cancel(UUID id) {
        return jdbc.sql("update " + table + " set status = 'CANCELLED', finished_at = ? where id = ?"
                + " and status in ('QUEUED', 'RUNNING')").params(now(), id).update() == 1;
    }

    private boolean ours(Claim claim, String assignments, Columns further, @Nullable Object... values) {
        var all = behind(further, values);
        all.add(claim.id());
        all.add(claim.attempt());
        return jdbc.sql("update " + table + " set " + assignments + further.further() + OURS).params(all).update() == 1;
    }

    private static ArrayList<@Nullable Object> behind(Columns further, @Nullable Object... values) {
        var all = new ArrayList<@Nullable Object>(Arrays.asList(values));
        all.addAll(further.values());
        return all;
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }
}
