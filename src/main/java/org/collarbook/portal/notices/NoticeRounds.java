package org.collarbook.portal.notices;

import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

/** Looks every second for what is to be sent, on threads of its own: other scheduled work takes minutes at times. */
@Component
class NoticeRounds implements DisposableBean {

    private static final Logger log = LoggerFactory.getLogger(NoticeRounds.class);

    private final DeliverNotices deliver;
    private final TellDueSoon dueSoon;
    private final NoticeUpkeep upkeep;
    private final ScheduledExecutorService rounds = Executors.newScheduledThreadPool(2,
            Thread.ofPlatform().daemon().name("notice-rounds-", 0).factory());

    NoticeRounds(DeliverNotices deliver, TellDueSoon dueSoon, NoticeUpkeep upkeep) {
        this.deliver = deliver;
        this.dueSoon = dueSoon;
        this.upkeep = upkeep;
    }

    /** Once, when the service has started. */
    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}")
    void start() {
        rounds.scheduleWithFixedDelay(() -> guarded(deliver::begin), 0, 1, TimeUnit.SECONDS);
        rounds.scheduleWithFixedDelay(() -> guarded(dueSoon::scan), 0, 60, TimeUnit.SECONDS);
        rounds.scheduleWithFixedDelay(() -> guarded(upkeep::run), 1, 60, TimeUnit.MINUTES);
    }

    /** What is thrown would end the rounds for good. */
    private static void guarded(Runnable round) {
        try {
            round.run();
        } catch (DataAccessException | TransactionException failed) {
            log.warn("A round of notices was interrupted and is made again", failed);
        } catch (RuntimeException fault) {
            log.error("A round of notices failed", fault);
        }
    }

    @Override
    public void destroy() {
        rounds.shutdownNow();
    }
}
