package org.collarbook.dispatch.lists;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.dispatch.lists.PullList.Action;
import org.collarbook.holds.HoldReason;
import org.jspecify.annotations.Nullable;

/**
 * What the driver looks at before a container is moved. The instructions are common practice, no source; that nothing is
 * put into an overdue one and that it travels full only where a fill in time is on record follows 49 CFR 180.205(c).
 */
final class DriverChecks {

    private static final String ASK = "before the depot or a qualified person has been asked.";

    private DriverChecks() {}

    static List<String> of(PullRow row) {
        var checks = new ArrayList<String>();
        checks.add(row.holds().contains(HoldReason.ILLEGIBLE_MARKS)
                ? "Its marks cannot be read: ask the depot which one it is before you take it."
                : compare(row.action()));
        checks.addAll(ofStatus(row));
        checks.addAll(ofAction(row.action()));
        return List.copyOf(checks);
    }

    /** Whoever meets it tells where it is; what else is to be looked at holds wherever that is. */
    static List<String> ofDisputed(@Nullable PullRow row) {
        var checks = new ArrayList<String>();
        checks.add("Two places claim it: scan where it stands, and put nothing in until that is settled.");
        checks.addAll(row == null ? List.of() : of(row));
        return List.copyOf(checks);
    }

    private static String compare(Action action) {
        var marks = action == Action.SWAP
                ? "the serial and the latest stamped date"
                : "the data plate and the latest marked test";
        return "Compare " + marks + " with this line; where they differ, ask the depot first.";
    }

    private static List<String> ofStatus(PullRow row) {
        boolean travels = row.action() != Action.WORK_AT_SITE;
        return switch (row.status()) {
            case CONDEMNED, REJECTED -> travels
                    ? List.of("Out of service: put nothing in. Do not load it with gas in it " + ASK)
                    : List.of("Out of service: put nothing in.");
            case ON_HOLD -> held(row, travels);
            case OVERDUE -> travels
                    ? List.of("Overdue: do not top it off.",
                            "No fill before it fell due is on record: do not load it with gas in it " + ASK)
                    : List.of("Overdue: do not top it off.");
            case USE_UP -> List.of("Past its month: do not top it off.");
            case UNDETERMINED, OTHER_AUTHORITY, DUE_THIS_MONTH, IN_DATE, NOT_REQUIRED -> List.of();
        };
    }

    private static List<String> held(PullRow row, boolean travels) {
        var checks = new ArrayList<String>();
        row.holds().stream().distinct().forEach(reason -> checks.add("Held: " + reason.sentence()));
        if (checks.isEmpty()) {
            checks.add("Held: the depot can tell why.");
        }
        if (!travels) {
            checks.add("Put nothing in.");
        } else if (row.holds().isEmpty() || row.holds().stream().anyMatch(DriverChecks::mayBeUnsafe)) {
            checks.add("Put nothing in, and do not load it " + ASK);
        } else {
            checks.add("Put nothing in, and do not load it with gas in it " + ASK);
        }
        return checks;
    }

    /** Whether what holds it may make the load unsafe even when it is thought to be empty. */
    private static boolean mayBeUnsafe(HoldReason reason) {
        return switch (reason) {
            case OVERFILLED_OR_DISCHARGED, FILLED_NOT_ALLOWED, DENTED, CORRODED, LEAKING, FIRE_OR_OVERHEATED, ACCIDENT,
                    COLLAR_OR_FOOT_RING_MISSING, TARE_LOSS, VALVE_DEFECT, RECALLED ->
                true;
            case ILLEGIBLE_MARKS, LOST, IDENTITY_DISPUTED, OWNER_CONSENT_MISSING -> false;
        };
    }

    private static List<String> ofAction(Action action) {
        return switch (action) {
            case SWAP -> List.of();
            case BRING_IN -> List.of("Do not drain or vent it on the road.");
            case WORK_AT_SITE -> List.of("It stays where it stands: do not drain, vent or move it.");
        };
    }
}
