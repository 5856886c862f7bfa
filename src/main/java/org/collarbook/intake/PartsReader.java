package org.collarbook.intake;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

import org.collarbook.intake.Besides.GivenPart;
import org.collarbook.registry.fittings.Part.Fitted;
import org.collarbook.registry.fittings.Part.Removal;
import org.collarbook.registry.fittings.PartKind;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Fittings.Label;
import org.jspecify.annotations.Nullable;

/** Reads the parts that a row tells of, those in place and those taken out. */
final class PartsReader {

    private static final Set<String> WORDS = Set.of("made", "fitted", "maker", "model", "serial", "label", "removed",
            "reason", "for");
    static final String ACCEPTED = "parts apart by ;, each one of "
            + Arrays.stream(PartKind.values()).map(Constants::word).collect(Collectors.joining(", "))
            + " | fitted YYYY-MM-DD, and where known | made YYYY-MM (of a relief valve always) | maker | model | serial"
            + " | label (horizontal, industrial truck or welding and cutting; of an exemption label always) | removed"
            + " YYYY-MM-DD | reason | for good";

    private final Cells cells;
    private final ContainerKind kind;
    private final Days days;

    PartsReader(Cells cells, ContainerKind kind, Days days) {
        this.cells = cells;
        this.kind = kind;
        this.days = days;
    }

    List<GivenPart> read() {
        var parts = new ArrayList<GivenPart>();
        for (var item : cells.list(LedgerColumn.PARTS, ACCEPTED)) {
            var part = WORDS.containsAll(item.more().keySet()) ? part(item) : null;
            if (part == null) {
                refuse("INVALID_PART", item.head());
            } else if (parts.stream().anyMatch(other -> other.fitted().equals(part.fitted()))) {
                refuse("TOLD_TWICE", item.head());
            } else {
                parts.add(part);
            }
        }
        return parts;
    }

    private void refuse(String code, String found) {
        cells.problems().refuse(LedgerColumn.PARTS, code, found, ACCEPTED);
    }

    private @Nullable GivenPart part(ListItem item) {
        var what = Constants.of(item.head(), PartKind.class);
        var fitted = Days.day(item.get("fitted"));
        var made = Days.month(item.get("made"));
        var label = Constants.of(item.get("label"), Label.class);
        if (what == null || fitted == null || !days.admit(cells, LedgerColumn.PARTS, fitted)
                || (made == null) != (item.get("made") == null) || (label == null) != (item.get("label") == null)
                || (what == PartKind.EXEMPTION_LABEL) != (label != null) || isImpossible(what, made, fitted)) {
            return null;
        }
        var told = new Fitted(what, item.get("maker"), item.get("model"), item.get("serial"), made, fitted, label);
        if (!isText(told.maker(), 100) || !isText(told.model(), 100) || !isText(told.serial(), 60)) {
            return null;
        }
        var removal = removal(item, fitted);
        return removal == null && (item.get("removed") != null || item.get("reason") != null
                || item.get("for") != null) ? null : new GivenPart(told, removal);
    }

    private boolean isImpossible(PartKind what, @Nullable YearMonth made, LocalDate fitted) {
        return what == PartKind.RELIEF_VALVE && made == null
                || made != null && (made.getYear() < 1900 || made.atDay(1).isAfter(fitted))
                || kind != ContainerKind.CYLINDER
                        && (what == PartKind.EXEMPTION_LABEL || what == PartKind.OVERFILL_PREVENTION_DEVICE);
    }

    private @Nullable Removal removal(ListItem item, LocalDate fitted) {
        var day = Days.day(item.get("removed"));
        var reason = item.get("reason");
        var forGood = item.get("for");
        return day == null || day.isBefore(fitted) || !days.admit(cells, LedgerColumn.PARTS, day) || reason == null
                || !isText(reason, 500) || forGood != null && !forGood.equalsIgnoreCase("good")
                        ? null
                        : new Removal(day, reason, forGood != null);
    }

    static boolean isText(@Nullable String text, int longest) {
        return text == null || !text.isEmpty() && text.length() <= longest
                && text.codePoints().noneMatch(Character::isISOControl);
    }
}
