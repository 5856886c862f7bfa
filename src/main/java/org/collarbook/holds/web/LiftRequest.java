package org.collarbook.holds.web;

import java.util.UUID;

import org.collarbook.holds.Lifting.Way;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** Who says that a hold's reason is gone. A requalification of a later day is recorded, and lifts by itself. */
@Schema(requiredProperties = "by")
record LiftRequest(@Nullable String by, @Nullable String name, @Nullable String qualification,
        @Nullable UUID requalification, @Nullable String note) {

    private static final String ACCEPTED = "COMPETENT_PERSON, CLERK, or REQUALIFICATION for a test that"
            + " came after and lifted nothing by itself";

    private enum By {
        COMPETENT_PERSON,
        CLERK,
        REQUALIFICATION
    }

    record Read(Way way, @Nullable String note) {}

    Read read() {
        var inputs = new Inputs();
        var who = by(inputs);
        var said = inputs.optional("/note", note, 1000);
        var way = who == null ? null : switch (who) {
            case COMPETENT_PERSON -> person(inputs);
            case CLERK -> clerk(said, inputs);
            case REQUALIFICATION -> test(inputs);
        };
        if (who != By.REQUALIFICATION && requalification != null) {
            inputs.refuse("/requalification", "NOT_ALLOWED", requalification.toString(), "only by REQUALIFICATION");
        }
        inputs.done();
        if (way == null) {
            throw new IllegalStateException("a way was neither read nor refused");
        }
        return new Read(way, said);
    }

    private @Nullable By by(Inputs inputs) {
        var given = by == null || by.isBlank() ? null : by.strip();
        if (inputs.present("/by", given, ACCEPTED) == null) {
            return null;
        }
        for (var one : By.values()) {
            if (one.name().equalsIgnoreCase(given)) {
                return one;
            }
        }
        inputs.refuse("/by", "UNKNOWN_WORD", by, ACCEPTED);
        return null;
    }

    private @Nullable Way person(Inputs inputs) {
        var who = inputs.required("/name", name, 200);
        var qualified = inputs.required("/qualification", qualification, 200);
        return who == null || qualified == null ? null : new Way.CompetentPerson(who, qualified);
    }

    /** Nobody inspected anything, so what the office knows is asked for. */
    private @Nullable Way clerk(@Nullable String said, Inputs inputs) {
        if (note == null || note.isBlank()) {
            inputs.required("/note", note, 1000);
        }
        refusePerson(inputs);
        return said == null ? null : new Way.Clerk();
    }

    private @Nullable Way test(Inputs inputs) {
        refusePerson(inputs);
        var test = inputs.present("/requalification", requalification, "the id of the test that came after");
        return test == null ? null : new Way.Requalification(test);
    }

    private void refusePerson(Inputs inputs) {
        if (name != null) {
            inputs.refuse("/name", "NOT_ALLOWED", name, "no name: the caller's key says who lifts it");
        }
        if (qualification != null) {
            inputs.refuse("/qualification", "NOT_ALLOWED", qualification, "no qualification: nobody inspects it here");
        }
    }
}
