package org.collarbook.compliance;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.jspecify.annotations.Nullable;

/** What the recorded parts of a container make of its facts. */
record Fitted(String kind, @Nullable YearMonth made, LocalDate on, @Nullable LocalDate removedOn, boolean forGood,
        Fittings.@Nullable Label label) {

    private static final String RELIEF_VALVE = "RELIEF_VALVE";

    /** Written by the statement as kind, month made, day fitted, day removed, for good, label; by day fitted. */
    static Fitted parse(String text) {
        var part = text.split(",", -1);
        return new Fitted(part[0], part[1].isEmpty() ? null : YearMonth.from(LocalDate.parse(part[1])),
                LocalDate.parse(part[2]), part[3].isEmpty() ? null : LocalDate.parse(part[3]), part[4].equals("true"),
                part[5].isEmpty() ? null : Fittings.Label.valueOf(part[5]));
    }

    private boolean isInPlace(String wanted) {
        return kind.equals(wanted) && removedOn == null;
    }

    /** Null where nothing is recorded. */
    static @Nullable Fittings fittings(List<Fitted> parts) {
        if (parts.isEmpty()) {
            return null;
        }
        var since = parts.stream().map(Fitted::lastDay).max(Comparator.naturalOrder()).orElseThrow();
        var label = parts.stream().filter(part -> part.isInPlace("EXEMPTION_LABEL")).findFirst();
        return new Fittings(reliefValve(parts), known(parts, "OVERFILL_PREVENTION_DEVICE"),
                label.isEmpty() ? null : label.get().label, since);
    }

    private static @Nullable Boolean known(List<Fitted> parts, String kind) {
        return parts.stream().noneMatch(part -> part.kind.equals(kind))
                ? null
                : (Boolean) parts.stream().anyMatch(part -> part.isInPlace(kind));
    }

    /** Each one that was taken out, not for good, asks for another fitted on that day or later. */
    private static @Nullable Boolean reliefValve(List<Fitted> parts) {
        var successors = new ArrayList<>(parts.stream().filter(part -> part.kind.equals(RELIEF_VALVE)).toList());
        if (successors.isEmpty()) {
            return null;
        }
        var removals = successors.stream().filter(part -> part.removedOn != null && !part.forGood)
                .sorted(Comparator.comparing(Fitted::lastDay)).toList();
        boolean replaced = true;
        for (var removed : removals) {
            var next = successors.stream().filter(other -> other != removed && !other.on.isBefore(removed.lastDay()))
                    .findFirst();
            next.ifPresent(successors::remove);
            replaced &= next.isPresent();
        }
        return replaced && parts.stream().anyMatch(part -> part.isInPlace(RELIEF_VALVE));
    }

    private LocalDate lastDay() {
        return removedOn == null ? on : removedOn;
    }

    /** The clock of a relief valve runs from the month stamped on the oldest one in place. */
    static List<Requalification> clock(List<Fitted> parts) {
        return valves(parts).map(Fitted::made).filter(made -> made != null).min(Comparator.naturalOrder())
                .map(made -> Requalification.passed(made, Method.VALVE_REPLACED)).stream().toList();
    }

    /**
     * Without what was done to valves that are in place no more. A pass is left out unless it is surely of those that are,
     * a rejection only if it surely is of none of them: a sheet tells no hour, so one of the day of the change may be of
     * the new one.
     */
    static List<Dated> ofThese(List<Dated> recorded, List<Fitted> parts) {
        var valves = valves(parts).toList();
        return valves.isEmpty()
                ? recorded
                : recorded.stream().filter(one -> !wasDoneToOthers(one, valves.getFirst().on, valves.getLast().on))
                        .toList();
    }

    private static Stream<Fitted> valves(List<Fitted> parts) {
        return parts.stream().filter(part -> part.isInPlace(RELIEF_VALVE));
    }

    private static boolean wasDoneToOthers(Dated one, LocalDate firstFitted, LocalDate lastFitted) {
        var method = one.done().method();
        if (method == null || !method.isOfValve()) {
            return false;
        }
        return switch (one.done().result()) {
            // the fitting itself may be recorded as a replacement too, some days later
            case PASSED -> method == Method.VALVE_REPLACED
                    ? !one.done().month().isAfter(YearMonth.from(lastFitted))
                    : !one.isAfter(lastFitted);
            case REJECTED -> one.isBefore(firstFitted);
            case CONDEMNED -> false;
        };
    }
}
