package org.collarbook.compliance.declarations;

import java.util.List;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.function.BiFunction;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Carries declarations and their withdrawals out in short transactions. Where it has been is told by the outcomes and by
 * the containers themselves, so that a killed one is gone on with by whichever service comes next.
 */
@Component
class DeclarationSweep {

    private static final Logger log = LoggerFactory.getLogger(DeclarationSweep.class);
    /** Whoever declares waits for so many chunks; the rest is done after the answer. */
    private static final int AT_ONCE = 10;

    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final GroupDeclarations declarations;
    private final ApplyDeclaration apply;

    DeclarationSweep(JdbcClient jdbc, TransactionTemplate transaction, GroupDeclarations declarations,
            ApplyDeclaration apply) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.declarations = declarations;
        this.apply = apply;
    }

    @Scheduled(initialDelayString = "${collarbook.recompute.after:PT1S}", fixedDelayString = "PT10S")
    void run() {
        jdbc.sql("""
                select s.declaration_id from declaration_sweep s
                left join declaration_withdrawal w on w.declaration_id = s.declaration_id
                where s.undone_at is null and (s.finished_at is null or w.declaration_id is not null)
                order by s.declaration_id""").query(UUID.class).list().forEach(id -> goOn(id, Integer.MAX_VALUE));
    }

    /** The same for one at once, as far as somebody may wait for it. */
    void start(UUID declaration) {
        goOn(declaration, AT_ONCE);
    }

    private void goOn(UUID declaration, int chunks) {
        try {
            over(declaration, chunks);
        } catch (DataAccessException | TransactionException failed) {
            log.warn("Declaration {} is recorded; carrying it out was interrupted and goes on later", declaration,
                    failed);
        }
    }

    /** So many chunks of it, and what is left over by those when they were the last. */
    void over(UUID id, int chunks) {
        var declaration = declarations.require(id);
        boolean isWithdrawn = declaration.withdrawal() != null;
        boolean done = free(declaration, chunks, isWithdrawn ? apply::undoNext : apply::fillNext);
        if (done && isWithdrawn) {
            oneByOne(declaration, apply::resting, apply::undoOne);
        } else if (done && declarations.require(id).withdrawal() == null) {
            oneByOne(declaration, apply::untold, apply::fillOne);
        }
        transaction.executeWithoutResult(status -> apply.finish(id));
    }

    private boolean free(GroupDeclaration declaration, int chunks,
            BiFunction<GroupDeclaration, UUID, List<UUID>> work) {
        var after = ApplyDeclaration.FIRST;
        for (int i = 0; i < chunks; i++) {
            var from = after;
            var done = transaction.execute(status -> work.apply(declaration, from));
            if (done == null || done.size() < ApplyDeclaration.CHUNK) {
                return true;
            }
            after = done.getLast();
        }
        return false;
    }

    /** What somebody else was at is waited for with nothing else in hand. */
    private void oneByOne(GroupDeclaration declaration, BiFunction<UUID, UUID, List<UUID>> left,
            BiConsumer<GroupDeclaration, UUID> work) {
        var after = ApplyDeclaration.FIRST;
        for (var next = left(declaration, after, left); !next.isEmpty(); next = left(declaration, after, left)) {
            next.forEach(id -> transaction.executeWithoutResult(status -> work.accept(declaration, id)));
            after = next.getLast();
        }
    }

    private List<UUID> left(GroupDeclaration declaration, UUID after, BiFunction<UUID, UUID, List<UUID>> left) {
        var read = transaction.execute(status -> left.apply(declaration.id(), after));
        return read == null ? List.of() : read;
    }
}
