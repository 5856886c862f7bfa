package org.collarbook.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/**
 * Writes the tests of a container: the last one as its mark where that says all, the others after it. A mark that would be
 * read otherwise today stands beside what is recorded.
 */
final class WrittenTests {

    private final boolean collarRead;
    private final Collar collar;
    private final WrittenDeclarations declared;

    WrittenTests(RegisteredContainer container, WrittenDeclarations declared, LocalDate today) {
        this.collarRead = container.particulars().collarRead();
        this.declared = declared;
        var marks = container.marks();
        this.collar = Collar.of(marks.specification().value(), marks.manufactured() == null
                ? null
                : marks.manufactured().value(), today);
    }

    /** Tests of one mark; {@code rin} is what the mark leaves out of it. */
    private record Marked(String stamp, @Nullable Rin rin, List<WrittenTest> tests) {}

    void put(List<WrittenTest> tests, Map<LedgerColumn, String> cells) {
        if (collarRead) {
            cells.put(tests.isEmpty() ? LedgerColumn.LAST_TEST_MARK : LedgerColumn.COLLAR_READ,
                    tests.isEmpty() ? "none" : "yes");
        }
        var left = new ArrayList<>(tests);
        if (!left.isEmpty()) {
            left.removeAll(last(tests, cells));
        }
        var others = new ArrayList<List<String>>();
        while (!left.isEmpty()) {
            var first = left.getFirst();
            var marked = marked(first, left);
            if (marked == null) {
                others.add(writtenOut(first));
                left.removeFirst();
            } else {
                var parts = new ArrayList<>(List.of(marked.stamp));
                WrittenRow.add(parts, "RIN", marked.rin == null ? null : marked.rin.toString());
                others.add(parts);
                left.removeAll(marked.tests);
            }
        }
        if (!others.isEmpty()) {
            cells.put(LedgerColumn.OTHER_TESTS, ListItem.write(others));
        }
    }

    /** Those that the columns of the last test tell. */
    private List<WrittenTest> last(List<WrittenTest> tests, Map<LedgerColumn, String> cells) {
        var last = tests.getFirst();
        var marked = marked(last, tests);
        if (marked != null) {
            cells.put(LedgerColumn.LAST_TEST_MARK, marked.stamp);
            WrittenRow.put(cells, LedgerColumn.RIN, marked.rin);
            return marked.tests;
        }
        var done = last.done();
        if (!last.isPlain() || last.stamp() != null || done.method() != null || done.star() || done.plus()) {
            return List.of();
        }
        cells.put(LedgerColumn.LAST_TEST_MONTH, done.month().toString());
        WrittenRow.put(cells, LedgerColumn.RIN, done.rin());
        return List.of(last);
    }

    /** The tests of the mark of one of them, where reading it gives just those. */
    private @Nullable Marked marked(WrittenTest one, List<WrittenTest> among) {
        var stamp = one.stamp();
        if (stamp == null || !one.isPlain() || OtherTestsReader.WRITTEN_OUT.matcher(stamp).matches()
                || stamp.equalsIgnoreCase("none") || !stamp.equals(stamp.strip())
                || !(RequalificationMark.read(stamp,
                        collar) instanceof Read<RequalificationMark>(var _, var mark, var _))) {
            return null;
        }
        var rin = mark.rin() == null ? one.done().rin() : null;
        var same = among.stream().filter(test -> test.isPlain() && stamp.equals(test.stamp())
                && test.done().month().equals(one.done().month())).toList();
        var told = new ArrayList<Requalification>();
        mark.requalifications().forEach(test -> told.add(new Requalification(test.month(), test.method(), test.star(),
                test.plus(), test.rin() == null ? rin : test.rin(), false, test.result())));
        var recorded = same.stream().map(WrittenTest::done).toList();
        return told.size() == recorded.size() && new HashSet<>(told).equals(new HashSet<>(recorded))
                ? new Marked(stamp, rin, same)
                : null;
    }

    private List<String> writtenOut(WrittenTest test) {
        var done = test.done();
        var parts = new ArrayList<String>();
        var when = test.day() == null ? done.month().toString() : test.day().toString();
        parts.add(done.method() == null ? when : when + " " + Constants.word(done.method()));
        WrittenRow.add(parts, "RIN", done.rin() == null ? done.rinSeen() ? "seen" : null : done.rin().toString());
        addIf(done.star(), "star", parts);
        addIf(done.plus(), "plus", parts);
        addIf(done.result() == Result.REJECTED, "rejected", parts);
        addIf(done.result() == Result.CONDEMNED, "condemned", parts);
        WrittenRow.add(parts, "declared", test.declaration() == null
                ? null
                : String.valueOf(declared.number(test.declaration())));
        WrittenRow.add(parts, "stamped", test.stamp());
        return parts;
    }

    private static void addIf(boolean told, String word, List<String> parts) {
        if (told) {
            parts.add(word);
        }
    }
}
