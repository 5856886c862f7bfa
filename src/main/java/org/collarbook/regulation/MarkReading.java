package org.collarbook.regulation;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;

/** Reads the date of a mark and its suffix, and puts the two together. */
final class MarkReading {

    /** Something else than a RIN stands in its place. */
    private static final Pattern ODD_RIN = Pattern
            .compile("\\d{1,2} ?[-/. ] ?([A-Z]+\\d[A-Z0-9]*|\\d+[A-Z][A-Z0-9]*) ?[-/. ] ?\\d{2,4}.*");

    private final StampText text;
    private final String capitals;
    private final Collar collar;

    MarkReading(String raw, Collar collar) {
        this.text = StampText.of(raw);
        this.capitals = text.capitals();
        this.collar = collar;
    }

    Reading<RequalificationMark> read() {
        DateStamp date = DateStamp.at(capitals);
        if (date == null) {
            return noDate();
        }
        if (date.letters().stream().anyMatch(this::mayBeMethod)) {
            return text.unreadable(date.lettersBetween() ? date.first().at() + date.first().text().length() : 0,
                    "the letter of the method after the year, such as 5-16E");
        }
        String tail = capitals.substring(date.end());
        MarkSuffix suffix = MarkSuffix.read(tail.strip(), collar.specification());
        DateOrder order = DateOrder.of(collar.specification(), date, suffix != null && !suffix.isEmpty());
        return switch (new DateReading(text, date, collar).read(order)) {
            case Unreadable<YearMonth> unreadable -> unreadable.as();
            case Read<YearMonth> one -> suffix == null
                    ? oddSuffix(date, tail)
                    : marks(date, suffix, List.of(one.value()), one.warnings(), "");
            case Ambiguous<YearMonth> several -> suffix == null
                    ? oddSuffix(date, tail)
                    : marks(date, suffix, several.readings(), List.of(), several.because());
        };
    }

    private Unreadable<RequalificationMark> noDate() {
        Matcher odd = ODD_RIN.matcher(capitals);
        return odd.matches()
                ? text.unreadable(odd.start(1), "a RIN of a letter and three digits between month and year, such as"
                        + " 5/B045/16 E")
                : text.unreadable(DateStamp.stopsAt(capitals), "month, RIN if any, and year, such as 5-16E or"
                        + " 5/B045/16 E");
    }

    /** Under UN and ADR the letters before the date are those of the country: "E" is Spain. */
    private boolean mayBeMethod(String letters) {
        return !collar.isUnder(Authority.UN, Authority.ADR) && MarkSuffix.read(letters, null) != null;
    }

    private Unreadable<RequalificationMark> oddSuffix(DateStamp date, String tail) {
        return text.unreadable(date.end() + tail.length() - tail.stripLeading().length(), MarkSuffix.EXPECTED);
    }

    private Reading<RequalificationMark> marks(DateStamp date, MarkSuffix suffix, List<YearMonth> months,
            List<String> warnings, String because) {
        DateStamp.Number stamped = date.rin();
        Rin rin = stamped == null ? null : new Rin(stamped.text());
        List<RequalificationMark> marks = new ArrayList<>();
        for (YearMonth month : months) {
            for (List<Method> done : suffix.alternatives()) {
                marks.add(new RequalificationMark(month, rin, done, suffix.star(), suffix.plus()));
            }
        }
        if (marks.size() == 1) {
            return new Read<>(text.raw(), marks.getFirst(), doubts(marks.getFirst(), suffix, warnings));
        }
        String method = suffix.alternatives().size() == 1
                ? ""
                : "an S is a proof pressure test, and on series 8 the shell alone: the specification decides";
        return new Ambiguous<>(text.raw(), marks, because.isEmpty() || method.isEmpty()
                ? because + method
                : because
                        + "; " + method);
    }

    private List<String> doubts(RequalificationMark mark, MarkSuffix suffix, List<String> warnings) {
        List<String> doubts = new ArrayList<>(warnings);
        if (suffix.warning() != null) {
            doubts.add(suffix.warning());
        }
        boolean foreign = collar.isUnder(Authority.TC, Authority.UN, Authority.ADR, Authority.ASME);
        if (suffix.isEmpty() && mark.rin() == null && collar.isUnder(Authority.UN, Authority.ADR)) {
            doubts.add(
                    "a UN or ADR mark names no method; read as the whole periodic inspection with its pressure test");
        }
        if (!foreign && mark.methods().stream().noneMatch(Method::isOfTank)
                && mark.requalifications().getFirst().lacksRin()) {
            doubts.add(RequalificationMark.RIN_NOT_RECORDED);
        }
        return doubts;
    }
}
