package org.collarbook.registry;

import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Containers.Act;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Marks that were misread are read anew, one act at a time; an act is taken back by its name. */
@Component
public class MarkCorrections {

    private static final String TAG = "tag";

    private final Containers containers;
    private final CorrectionRows rows;
    private final Clock clock;

    MarkCorrections(Containers containers, CorrectionRows rows, Clock clock) {
        this.containers = containers;
        this.rows = rows;
        this.clock = clock;
    }

    /** The marks as they are read now, by the names of requests; null says that a mark is not known after all. */
    @Transactional
    public Correction correct(UUID container, @Nullable String ifMatch, Map<String, @Nullable String> readNow,
            String reason, Caller by) {
        return done(containers.change(container, ifMatch, before -> with(before, before.tag(), readNow),
                new Act(reason, null), by));
    }

    /**
     * Puts the earlier values back. Refuses by problem where a later act changed one of them again, which is taken back
     * first, and an act that changed more than marks and tag.
     */
    @Transactional
    public Correction takeBack(UUID act, @Nullable String ifMatch, String reason, Caller by) {
        var taken = rows.find(act).orElseThrow(() -> Problem.notFound("correction").asException());
        return done(containers.change(taken.containerId(), ifMatch, before -> {
            refuseChangedSince(taken);
            return asBefore(taken, before);
        }, new Act(reason, act), by));
    }

    private Correction done(Containers.Changed changed) {
        return rows.find(changed.act()).orElseThrow();
    }

    private void refuseChangedSince(Correction taken) {
        for (var change : taken.changes()) {
            var last = rows.lastThatChanged(taken.containerId(), change.field()).orElseThrow();
            if (!last.equals(taken.id())) {
                throw Problem.conflict("CORRECTED_SINCE", "A later correction, " + last + ", changed " + change.field()
                        + " again. Nothing was stored: take that one back first, or correct the mark anew.")
                        .with("correction", last).asException();
            }
        }
    }

    private NewContainer asBefore(Correction taken, RegisteredContainer before) {
        var marks = new HashMap<String, @Nullable String>();
        var tag = before.tag();
        var known = Described.marks(before.marks()).keySet();
        for (var change : taken.changes()) {
            if (change.field().equals(TAG)) {
                tag = change.recorded() == null ? null : new Tag(change.recorded());
            } else if (known.contains(change.field())) {
                marks.put(change.field(), change.recorded());
            } else {
                throw Problem.conflict("NOT_A_MARK", "This correction also changed " + change.field() + ", which is no"
                        + " mark. Nothing was stored: correct the record as a whole instead.")
                        .with("field", change.field()).asException();
            }
        }
        return with(before, tag, marks);
    }

    private NewContainer with(RegisteredContainer before, @Nullable Tag tag, Map<String, @Nullable String> readNow) {
        return new NewContainer(read(before.marks(), readNow).keepingStampsOf(before.marks()), before.particulars(),
                tag, before.declaration(), before.declared(), before.further());
    }

    /** What is not read anew goes in by its plain form, which reads in one way only. */
    private Marks read(Marks before, Map<String, @Nullable String> readNow) {
        var texts = new LinkedHashMap<>(Described.plainMarks(before));
        texts.putAll(readNow);
        var reading = new StampedMarks(texts.get("kind"), texts.get("specification"), texts.get("maker"),
                texts.get("serial"), texts.get("manufactured"), texts.get("waterCapacity"), texts.get("tare"),
                texts.get("servicePressure")).read(LocalDate.now(clock));
        var marks = reading.marks();
        if (marks == null) {
            throw Problem.invalid(reading.refusals().stream().map(refused -> new FieldError("/marks"
                    + refused.pointer(), refused.code(), refused.found(), refused.accepted())).toList()).asException();
        }
        return marks;
    }
}
