package org.collarbook.inspection.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.inspection.bench.Attempt;
import org.collarbook.inspection.bench.Checked;
import org.collarbook.inspection.bench.Checked.Finding;
import org.collarbook.inspection.bench.Expansion;
import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.inspection.bench.VisualItem;
import org.collarbook.inspection.web.RequalificationRequest.ExpansionRequest;
import org.collarbook.inspection.web.RequalificationRequest.ItemRequest;
import org.collarbook.inspection.web.RequalificationRequest.RepeatRequest;
import org.jspecify.annotations.Nullable;

/** Reads what was looked at and measured. */
record MeasuredReader(RequalificationRequest request, Refusals refusals) {

    private static final int MOST_PSIG = 20_000;
    private static final int MOST_ATTEMPTS = 10;
    private static final Pattern VOLUME = Pattern.compile("(\\d{1,7}(?:\\.\\d{1,3})?)\\s*(?:cm3|cm³|cc|mL|ml)");
    private static final String VOLUMES = "cubic centimetres to the thousandth at most, with the unit, such as 63.2 cm3";

    List<Checked> items() {
        var read = new ArrayList<Checked>();
        var seen = EnumSet.noneOf(VisualItem.class);
        var given = request.visual() == null || request.visual().items() == null
                ? List.<@Nullable ItemRequest>of()
                : request.visual().items();
        // one more than there are, to catch the first that is told twice
        for (int i = 0; i < given.size() && i <= VisualItem.values().length; i++) {
            var checked = item("/visual/items/" + i, given.get(i));
            if (checked != null && !seen.add(checked.item())) {
                refusals.refuse("/visual/items/" + i + "/item", "TOLD_TWICE", checked.item(), "each item once");
            } else if (checked != null) {
                read.add(checked);
            }
        }
        if (!read.isEmpty() && read.stream().allMatch(one -> one.finding() == Finding.NOT_APPLICABLE)) {
            refusals.refuse("/visual/items", "NOTHING_INSPECTED", null, "at least one item that was looked at",
                    Sources.VISUAL_RECORD);
        }
        return read;
    }

    private @Nullable Checked item(String pointer, @Nullable ItemRequest given) {
        if (given == null || given.item() == null || given.item().isBlank()) {
            refusals.refuse(pointer + "/item", "MISSING", null, "what was looked at, such as CORROSION");
            return null;
        }
        if (given.finding() == null || given.finding().isBlank()) {
            refusals.refuse(pointer + "/finding", "MISSING", null, "SATISFACTORY, DEFECT or NOT_APPLICABLE");
        }
        var item = refusals.word(pointer + "/item", given.item(), VisualItem.class);
        var finding = refusals.word(pointer + "/finding", given.finding(), Finding.class);
        var note = refusals.text(pointer + "/note", given.note(), 500);
        if (note == null && (item == VisualItem.OTHER || finding == Finding.DEFECT)) {
            refusals.refuse(pointer + "/note", "MISSING", null, item == VisualItem.OTHER
                    ? "what was looked at"
                    : "what is wrong with it");
        }
        return item == null || finding == null ? null : new Checked(item, finding, note);
    }

    @Nullable
    Integer pressure(String pointer, @Nullable Integer given) {
        if (given != null && (given < 1 || given > MOST_PSIG)) {
            refusals.refuse(pointer, "OUT_OF_RANGE", given, "whole psig from 1 to " + MOST_PSIG);
            return null;
        }
        return given;
    }

    @Nullable
    Expansion expansion(String pointer, @Nullable ExpansionRequest given) {
        if (given == null) {
            return null;
        }
        var total = volume(pointer + "/total", given.total(), true);
        var permanent = volume(pointer + "/permanent", given.permanent(), true);
        var elastic = volume(pointer + "/elastic", given.elastic(), false);
        if (total == null || permanent == null) {
            return null;
        }
        if (total.signum() == 0) {
            refusals.refuse(pointer + "/total", "OUT_OF_RANGE", given.total(), "more than nothing");
            return null;
        }
        if (permanent.compareTo(total) > 0) {
            refusals.refuse(pointer + "/permanent", "OUT_OF_RANGE", given.permanent(), "not more than the total");
            return null;
        }
        var measured = new Expansion(total, permanent);
        if (elastic != null && elastic.compareTo(measured.elastic()) != 0) {
            refusals.refuse(pointer + "/elastic", "DOES_NOT_ADD_UP", given.elastic(),
                    measured.elastic().toPlainString() + " cm3, the total less the permanent", Sources.RECORD);
        }
        return measured;
    }

    private @Nullable BigDecimal volume(String pointer, @Nullable String given, boolean required) {
        if (given == null || given.isBlank()) {
            if (required) {
                refusals.refuse(pointer, "MISSING", given, VOLUMES, Sources.RECORD);
            }
            return null;
        }
        var shape = VOLUME.matcher(given.strip());
        if (!shape.matches()) {
            refusals.refuse(pointer, "INVALID_VOLUME", given, VOLUMES);
            return null;
        }
        return new BigDecimal(shape.group(1));
    }

    List<Attempt> repeats() {
        var read = new ArrayList<Attempt>();
        var given = request.repeats() == null ? List.<@Nullable RepeatRequest>of() : request.repeats();
        if (given.size() > MOST_ATTEMPTS) {
            refusals.refuse("/repeats", "TOO_MANY", given.size(), "at most " + MOST_ATTEMPTS + " earlier attempts");
            return read;
        }
        for (int i = 0; i < given.size(); i++) {
            var attempt = attempt("/repeats/" + i, given.get(i));
            if (attempt != null) {
                read.add(attempt);
            }
        }
        return read;
    }

    private @Nullable Attempt attempt(String pointer, @Nullable RepeatRequest given) {
        var told = given == null ? new RepeatRequest(null, null, null, null) : given;
        if (told.testPressurePsig() == null) {
            refusals.refuse(pointer + "/testPressurePsig", "MISSING", null, "the pressure of the attempt",
                    Sources.RECORD);
        }
        var pressure = pressure(pointer + "/testPressurePsig", told.testPressurePsig());
        var expansion = expansion(pointer + "/expansion", told.expansion());
        var note = refusals.required(pointer + "/note", told.note(), 500);
        if (!Attempt.Reason.APPARATUS_FAILED.name().equals(told.reason())) {
            refusals.refuse(pointer + "/reason", "REPEAT_NOT_ALLOWED", told.reason(),
                    "APPARATUS_FAILED: for no other reason is a test repeated", Sources.REPEATED_TEST);
        }
        return pressure == null || note == null
                ? null
                : new Attempt(pressure, expansion, Attempt.Reason.APPARATUS_FAILED, note);
    }
}
