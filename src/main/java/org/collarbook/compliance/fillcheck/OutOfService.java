package org.collarbook.compliance.fillcheck;

import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.registry.stamps.Stamp;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/** Stamps that take a container out of service: rejected, or condemned for good, 49 CFR 180.205(i). */
final class OutOfService {

    private OutOfService() {}

    static boolean says(Stamp stamp) {
        return stamp instanceof Stamp.Condemned || stamp instanceof Stamp.Rejected;
    }

    static @Nullable Citation citation(List<Stamp> possible) {
        return possible.stream().flatMap(StampComparison::parts).filter(Stamp.Condemned.class::isInstance)
                .map(Stamp.Condemned.class::cast).map(Stamp.Condemned::citation).findFirst().orElse(null);
    }

    /** That a rejection was recorded once says nothing of this one: only the last record does. */
    static boolean isRecorded(Stamp stamp, KnownContainer known) {
        var history = known.facts().requalifications();
        if (history == null || history.isEmpty()) {
            return false;
        }
        return stamp instanceof Stamp.Condemned
                ? history.stream().anyMatch(done -> done.result() == Result.CONDEMNED)
                : history.getLast().result() == Result.REJECTED;
    }
}
