package org.collarbook.inspection;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.Role;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.inspection.bench.TestSheet;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** A record that was a mistake: another entry takes its place or makes it void, and the first stays on record. */
@Component
public class CorrectRequalification {

    private final RecordedTests recorded;
    private final RecordRequalification recording;
    private final TestRecords records;
    private final Containers containers;
    private final ApplicationEventPublisher events;

    CorrectRequalification(RecordedTests recorded, RecordRequalification recording, TestRecords records,
            Containers containers, ApplicationEventPublisher events) {
        this.recorded = recorded;
        this.recording = recording;
        this.records = records;
        this.containers = containers;
        this.events = events;
    }

    /** The id of the entry that takes its place, or null when it is void ({@code instead} null). */
    @Transactional
    public @Nullable UUID correct(UUID mistaken, @Nullable TestSheet instead, String reason, Caller by) {
        var mistake = locked(mistaken);
        var container = mistake.containerId();
        refuseCorrected(mistake);
        refuseLifting(mistake, by);
        var replacedBy = instead == null ? null : recording.write(container, instead, mistaken, "/record", by);
        records.writeCorrection(mistaken, replacedBy, reason, by);
        events.publishEvent(new RequalificationRecorded(container, earlier(mistake.day(), instead)));
        return replacedBy;
    }

    private static LocalDate earlier(LocalDate day, @Nullable TestSheet instead) {
        return instead != null && instead.performedOn().isBefore(day) ? instead.performedOn() : day;
    }

    /** Read anew under the lock: a faster correction may have come between, or it counts for another container by then. */
    private RecordedTest locked(UUID id) {
        var before = find(id).containerId();
        containers.lock(before);
        var mistake = find(id);
        return mistake.containerId().equals(before) ? mistake : locked(id);
    }

    private RecordedTest find(UUID id) {
        return recorded.find(id).orElseThrow(() -> Problem.notFound("requalification").asException());
    }

    private static void refuseCorrected(RecordedTest mistake) {
        var corrected = mistake.corrected();
        if (corrected != null) {
            throw corrected.refusal().asException();
        }
    }

    /** A condemnation is never lifted; that it was recorded by mistake is for an administrator to say. */
    private static void refuseLifting(RecordedTest mistake, Caller by) {
        if (mistake.requalification().result() == Result.CONDEMNED && !by.roles().contains(Role.ADMINISTRATOR)) {
            throw Problem.of(HttpStatus.FORBIDDEN, "ADMINISTRATOR_REQUIRED", "A condemnation cannot be lifted; only an"
                    + " administrator corrects one that was recorded by mistake, with the reason. Nothing was stored.")
                    .with("citation", Sources.CONDEMNED_FOR_GOOD).asException();
        }
    }
}
