package org.collarbook.inspection.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.inspection.bench.CondemningGround;
import org.collarbook.inspection.bench.Contents;
import org.collarbook.inspection.bench.Contents.Need;
import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.inspection.bench.TestSheet;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/** Reads a record: well formed, and with neither more nor less than its method asks for. */
record SheetReader(RequalificationRequest request, Refusals refusals) {

    private static final BigDecimal LIGHTEST = new BigDecimal("0.1");
    private static final BigDecimal HEAVIEST = new BigDecimal("1000000");
    private static final BigDecimal HIGHEST_LIMIT = BigDecimal.valueOf(12);

    /** @param pointer where in the body the record stands */
    static TestSheet read(RequalificationRequest request, String pointer) {
        var reader = new SheetReader(request, new Refusals(pointer));
        var sheet = reader.sheet();
        reader.refusals.done();
        if (sheet == null) {
            throw new IllegalStateException("a record was neither read nor refused");
        }
        return sheet;
    }

    private @Nullable TestSheet sheet() {
        var day = day();
        var method = method();
        var operator = refusals.required("/operator", request.operator(), 200);
        var measured = new MeasuredReader(request, refusals);
        var items = measured.items();
        var expansion = measured.expansion("/expansion", request.expansion());
        var repeats = measured.repeats();
        var rin = Rins.read("/requalifier", request.requalifier(), refusals);
        var coating = refusals.text("/coating", request.coating(), 200);
        var owner = refusals.text("/owner", request.owner(), 200);
        var disposition = refusals.text("/disposition", request.disposition(), 1000);
        var note = refusals.text("/note", request.note(), 1000);
        var grounds = grounds();
        var marked = measured.pressure("/markedPressurePsig", request.markedPressurePsig());
        var test = measured.pressure("/testPressurePsig", request.testPressurePsig());
        var tare = within("/tareLb", request.tareLb(), LIGHTEST, HEAVIEST, "pounds");
        var limit = within("/limitPercent", request.limitPercent(), BigDecimal.ONE, HIGHEST_LIMIT, "percent");
        if (method != null) {
            compareWith(Contents.of(method), method);
        }
        return day == null || method == null || operator == null
                ? null
                : new TestSheet(day, method, rin, Boolean.TRUE.equals(request.star()),
                        Boolean.TRUE.equals(request.plus()), items, marked, test, expansion, limit, repeats, coating,
                        owner, operator, tare, grounds, disposition, note);
    }

    private @Nullable LocalDate day() {
        var given = request.performedOn();
        if (given == null) {
            refusals.refuse("/performedOn", "MISSING", null, "the day on which it was done");
            return null;
        }
        if (given.getYear() < 1900 || given.getYear() > 2200) {
            refusals.refuse("/performedOn", "OUT_OF_RANGE", given, "a day from 1900 on that has begun");
            return null;
        }
        return given;
    }

    private @Nullable Method method() {
        var given = request.method();
        if (given == null || given.isBlank()) {
            refusals.refuse("/method", "MISSING", given, Contents.methods());
            return null;
        }
        for (var known : Method.values()) {
            if (known.name().equalsIgnoreCase(given.strip()) && Contents.areHeldFor(known)) {
                return known;
            }
        }
        refusals.refuse("/method", "UNKNOWN_WORD", given, Contents.methods());
        return null;
    }

    private List<CondemningGround> grounds() {
        var read = new ArrayList<CondemningGround>();
        var given = request.grounds() == null ? List.<@Nullable String>of() : request.grounds();
        for (int i = 0; i < given.size() && i <= CondemningGround.values().length; i++) {
            var pointer = "/grounds/" + i;
            var word = given.get(i);
            var ground = refusals.word(pointer, word, CondemningGround.class);
            if (word == null || word.isBlank()) {
                refusals.refuse(pointer, "MISSING", word, "a ground of condemnation");
            } else if (ground != null && read.contains(ground)) {
                refusals.refuse(pointer, "TOLD_TWICE", word, "each ground once");
            } else if (ground != null) {
                read.add(ground);
            }
        }
        return read;
    }

    private @Nullable BigDecimal within(String pointer, @Nullable BigDecimal given, BigDecimal least, BigDecimal most,
            String unit) {
        // compared before it is scaled: a number of a billion digits is told apart without writing them out
        if (given == null || given.compareTo(least) >= 0 && given.compareTo(most) <= 0
                && given.stripTrailingZeros().scale() <= 3) {
            return given;
        }
        refusals.refuse(pointer, "OUT_OF_RANGE", given.precision() > 40 ? "a longer number" : given,
                "from " + least + " to " + most + " " + unit + ", to the thousandth at most");
        return null;
    }

    private void compareWith(Contents asked, Method method) {
        var items = request.visual() == null ? null : request.visual().items();
        compare("/visual", items == null || items.isEmpty() ? null : items, asked.visual(), method, asked.source());
        compare("/markedPressurePsig", request.markedPressurePsig(), asked.pressures(), method, asked.source());
        compare("/testPressurePsig", request.testPressurePsig(), asked.pressures(), method, asked.source());
        compare("/repeats", request.repeats() == null || request.repeats().isEmpty() ? null : request.repeats(),
                Contents.mayBeRepeated(method) ? Need.OPTIONAL : Need.NONE, method, asked.source());
        compare("/expansion", request.expansion(), asked.expansion(), method, asked.source());
        compare("/limitPercent", request.limitPercent(), asked.expansion() == Need.NONE ? Need.NONE : Need.OPTIONAL,
                method, asked.source());
        var visual = asked.coatingAndOwner() == Need.REQUIRED ? Sources.VISUAL : asked.source();
        compare("/coating", blank(request.coating()), asked.coatingAndOwner(), method, visual);
        compare("/owner", blank(request.owner()), asked.coatingAndOwner(), method, visual);
        compare("/tareLb", request.tareLb(), Contents.isOfPart(method) ? Need.NONE : Need.OPTIONAL, method,
                asked.source());
    }

    private void compare(String pointer, @Nullable Object given, Need need, Method method,
            @Nullable Citation source) {
        if (given == null && need == Need.REQUIRED) {
            refusals.refuse(pointer, "MISSING", null, "what a record of " + method + " tells", source);
        } else if (given != null && need == Need.NONE) {
            refusals.refuse(pointer, "NOT_ALLOWED", null, "nothing: it is not of a record of " + method, source);
        }
    }

    private static @Nullable String blank(@Nullable String text) {
        return text == null || text.isBlank() ? null : text;
    }
}
