package org.collarbook.platform.web;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;

import org.springframework.http.HttpHeaders;

import jakarta.servlet.http.HttpServletRequest;

/**
 * The bodies that are still on their way, each of which keeps a thread waiting: so many of one caller, and of all callers
 * fewer than there are threads, so that whoever sends a byte now and then keeps nobody else from being answered.
 */
final class BodiesUnderWay {

    private final int ofOne;
    private final int ofAll;
    private final Map<String, Integer> byCaller = new HashMap<>();
    private int all;

    BodiesUnderWay(int ofOne, int ofAll) {
        this.ofOne = ofOne;
        this.ofAll = ofAll;
    }

    /** Until the body has come, or the request is over. */
    final class Place {

        private final String caller;
        private final AtomicBoolean taken = new AtomicBoolean(true);

        private Place(String caller) {
            this.caller = caller;
        }

        void leave() {
            if (taken.compareAndSet(true, false)) {
                BodiesUnderWay.this.leave(caller);
            }
        }
    }

    synchronized Optional<Place> take(HttpServletRequest request) {
        var key = request.getHeader(HttpHeaders.AUTHORIZATION);
        var caller = key == null ? request.getRemoteAddr() : key;
        int own = byCaller.getOrDefault(caller, 0);
        if (own >= ofOne || all >= ofAll) {
            return Optional.empty();
        }
        byCaller.put(caller, own + 1);
        all++;
        return Optional.of(new Place(caller));
    }

    private synchronized void leave(String caller) {
        all--;
        byCaller.computeIfPresent(caller, (same, own) -> own == 1 ? null : own - 1);
    }
}
