package org.collarbook.compliance;

import java.time.Duration;

import org.collarbook.platform.Unhurried;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** Where containers were and are no more is kept for as long as a portal may ask what changed since, and no longer. */
@Component
public class Departures {

    /** By the database's clock, which wrote them. */
    public static final Duration KEPT = Duration.ofDays(45);

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    Departures(JdbcClient jdbc, TransactionTemplate transaction) {
        this.transaction = transaction;
        this.jdbc = jdbc;
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT24H")
    void forget() {
        transaction.executeWithoutResult(status -> {
            Unhurried.go(jdbc);
            jdbc.sql("delete from departure where gone_at < now() - make_interval(days => ?)")
                    .param((int) KEPT.toDays()).update();
        });
    }
}
