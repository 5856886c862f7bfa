package org.collarbook.platform;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Consumer;
import java.util.function.Supplier;

/**
 * What is made beside the work of a transaction and is still to be written in it, before it ends and on its thread. The
 * database and this service then work at the same time on what is due to be written and what comes next.
 */
@FunctionalInterface
public interface Unwritten {

    Unwritten NOTHING = () -> {
    };

    void write();

    /** The making touches no database. */
    static <T> Unwritten made(Supplier<T> making, Consumer<T> writing) {
        var made = CompletableFuture.supplyAsync(making);
        return () -> {
            try {
                writing.accept(made.join());
            } catch (CompletionException failed) {
                throw failed.getCause() instanceof RuntimeException fault ? fault : failed;
            }
        };
    }

    default Unwritten and(Unwritten other) {
        return () -> {
            write();
            other.write();
        };
    }
}
