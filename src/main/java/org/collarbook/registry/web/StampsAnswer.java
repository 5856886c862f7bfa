package org.collarbook.registry.web;

import java.util.List;
import java.util.Map;

import org.collarbook.registry.stamps.CollarReading;
import org.collarbook.registry.stamps.ReadMarks;
import org.collarbook.registry.stamps.Stamp;
import org.collarbook.registry.stamps.StampKind;
import org.collarbook.registry.stamps.StampLine;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.RequalificationMark;
import org.jspecify.annotations.Nullable;

/** What each line says, and what the lines make together; a field that nobody read is absent. */
record StampsAnswer(List<LineReading> readings, MarksRead marks, @Nullable String caution) {

    private static final String CAUTION = "Not every line was read without a doubt. What is absent from the marks is not"
            + " known: look at the collar again and do not guess.";

    enum LineOutcome {
        READ,
        AMBIGUOUS,
        UNREADABLE
    }

    record PossibleStamp(StampKind kind, String value, Map<String, Object> fields) {

        static PossibleStamp from(Stamp stamp) {
            return new PossibleStamp(stamp.kind(), stamp.toString(), StampFields.of(stamp));
        }
    }

    /** {@code value} and {@code fields} of what was read; {@code readings} where several are possible. */
    record LineReading(int line, String raw, LineOutcome outcome, @Nullable StampKind kind, @Nullable String value,
            @Nullable Map<String, Object> fields, List<String> warnings, @Nullable Citation citation,
            @Nullable List<PossibleStamp> readings, @Nullable Integer index, @Nullable String found,
            @Nullable String expected) {

        static LineReading from(StampLine line) {
            var raw = StampLine.whole(line.reading().raw());
            return switch (line.reading()) {
                case Reading.Read<Stamp>(var _, var stamp, var warnings) -> new LineReading(line.number(), raw,
                        LineOutcome.READ, stamp.kind(), stamp.toString(), StampFields.of(stamp), warnings,
                        stamp instanceof Stamp.Condemned(var citation) ? citation : null, null, null, null, null);
                case Reading.Ambiguous<Stamp>(var _, var stamps, var because) -> new LineReading(line.number(), raw,
                        LineOutcome.AMBIGUOUS, line.kind(), null, null, List.of(because), null, stamps.stream()
                                .map(PossibleStamp::from).toList(),
                        null, null, null);
                case Reading.Unreadable<Stamp>(var _, var _, int index, var found, var expected) -> new LineReading(line
                        .number(), raw, LineOutcome.UNREADABLE, line.kind(), null, null, List.of(), null, null, index,
                        StampLine.whole(found), expected);
            };
        }
    }

    record MarkRead(String mark, String month, List<Method> methods, @Nullable String rin, boolean star,
            boolean plus) {

        static MarkRead from(RequalificationMark mark) {
            return new MarkRead(mark.toString(), mark.month().toString(), mark.methods(), text(mark.rin()), mark.star(),
                    mark.plus());
        }
    }

    /** {@code condemned} is true or absent; the warnings bar the container from service. */
    record MarksRead(@Nullable Boolean condemned, @Nullable Citation citation, @Nullable List<String> warnings,
            @Nullable String specification, @Nullable String maker, @Nullable String serial,
            @Nullable String manufactured, @Nullable String waterCapacity, @Nullable String tare,
            @Nullable String tareStamped, @Nullable String workingPressure, @Nullable String testPressure,
            @Nullable String tag, @Nullable List<MarkRead> requalifications) {

        static MarksRead from(ReadMarks marks) {
            var done = marks.requalifications().stream().map(MarkRead::from).toList();
            return new MarksRead(marks.condemned() == null ? null : true, marks.condemned(), orAbsent(marks.warnings()),
                    text(marks.specification()), text(marks.maker()), text(marks.serial()), text(marks.manufactured()),
                    text(marks.waterCapacity()), text(marks.tare()), StampFields.kilograms(marks.tareInKilograms()),
                    marks.workingPressure(), marks.testPressure(), text(marks.tag()), orAbsent(done));
        }

        private static <T> @Nullable List<T> orAbsent(List<T> list) {
            return list.isEmpty() ? null : list;
        }
    }

    static StampsAnswer from(CollarReading read) {
        var lines = read.lines().stream().map(LineReading::from).toList();
        boolean sure = lines.stream().allMatch(line -> line.outcome() == LineOutcome.READ && line.warnings().isEmpty());
        return new StampsAnswer(lines, MarksRead.from(read.marks()), sure ? null : CAUTION);
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }
}
