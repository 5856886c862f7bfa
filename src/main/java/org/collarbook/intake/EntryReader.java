package org.collarbook.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.platform.FieldError;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Kinds;
import org.collarbook.registry.Marks;
import org.collarbook.registry.Particulars;
import org.collarbook.registry.StampedMarks;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** Reads a row by itself: marks by the stamp readers, the rest by its columns. Says all that is wrong with it. */
final class EntryReader {

    private static final Map<String, LedgerColumn> BY_POINTER = Map.of("/kind", LedgerColumn.KIND, "/specification",
            LedgerColumn.SPECIFICATION, "/maker", LedgerColumn.MAKER, "/serial", LedgerColumn.SERIAL,
            "/manufactured", LedgerColumn.MANUFACTURED, "/waterCapacity", LedgerColumn.WATER_CAPACITY, "/tare",
            LedgerColumn.TARE, "/servicePressure", LedgerColumn.SERVICE_PRESSURE);

    private final LocalDate asOf;
    private final @Nullable Declaration said;
    private final DeclaredReader declared;

    EntryReader(LocalDate asOf, @Nullable Declaration said) {
        this.asOf = asOf;
        this.said = said;
        this.declared = new DeclaredReader(asOf);
    }

    /** The row, or null where the problems refuse it. */
    @Nullable
    LedgerEntry read(LedgerRow row, Problems problems) {
        if (!row.isComplete()) {
            problems.refuse(LedgerColumn.SPECIFICATION, "WRONG_CELL_COUNT", row.cellsFound() + " cells",
                    row.cellsExpected()
                            + " cells, as the header has columns; the last row of a file cut off has fewer");
            return null;
        }
        var cells = new Cells(row, problems);
        var marks = marks(cells);
        var tag = tag(cells);
        var site = SiteReader.read(cells);
        var known = new ParticularsReader(asOf, counting(marks)).read(cells);
        var saids = declared.read(cells, known);
        if (marks == null) {
            return null;
        }
        // the last test and fill are judged by the marks: where those are in doubt, more refusals would mislead
        var manufactured = marks.manufactured() == null ? null : marks.manufactured().value();
        var days = new Days(asOf, manufactured);
        var tests = tests(cells, marks, days, saids.size());
        var filled = filledOn(cells, days);
        var besides = besides(cells, marks, days);
        return problems.areKeepingOut()
                ? null
                : new LedgerEntry(marks.naturalKey(), marks, recorded(known, saids), tag, site, tests, filled,
                        withTests(saids, tests), besides);
    }

    /** The ledger's declaration; null where it was made before the container, so that it tells of no test or blank cell. */
    private @Nullable Declaration counting(@Nullable Marks marks) {
        return said != null && marks != null && said.isBefore(marks) ? null : said;
    }

    /** What rests on nobody's declaration. */
    private static Particulars recorded(Particulars told, List<RowDeclaration> declared) {
        var known = told;
        for (var one : declared) {
            known = known.without(one.facts());
        }
        return known;
    }

    private static List<RowDeclaration> withTests(List<RowDeclaration> declared, List<LastTest> tests) {
        return IntStream.range(0, declared.size())
                .mapToObj(i -> DeclaredReader.with(declared.get(i), i + 1, tests)).toList();
    }

    private List<LastTest> tests(Cells cells, Marks marks, Days days, int declarations) {
        var specification = marks.specification().value();
        var tests = new LastTestReader(asOf, counting(marks)).read(cells, days.manufactured(), specification);
        if (cells.isBlank(LedgerColumn.OTHER_TESTS)) {
            return tests;
        }
        var all = new ArrayList<>(tests);
        all.addAll(new OtherTestsReader(cells, days, Collar.of(specification, days.manufactured(), asOf), declarations)
                .read());
        return all;
    }

    private Besides besides(Cells cells, Marks marks, Days days) {
        var emptied = day(cells, LedgerColumn.EMPTIED_ON, days);
        if (emptied == null && cells.isBlank(LedgerColumn.STATUS) && cells.isBlank(LedgerColumn.PARTS)
                && cells.isBlank(LedgerColumn.OUT_OF_SERVICE)) {
            return Besides.NOTHING;
        }
        var status = StatusReader.read(cells, marks.specification().value(), days);
        return new Besides(status.inService(), status.holds(), status.standing(),
                new PartsReader(cells, marks.kind(), days).read(), StopsReader.read(cells, marks.kind(), days),
                emptied);
    }

    private @Nullable Marks marks(Cells cells) {
        var reading = new StampedMarks(kind(cells), cells.get(LedgerColumn.SPECIFICATION),
                cells.get(LedgerColumn.MAKER), cells.get(LedgerColumn.SERIAL), cells.get(LedgerColumn.MANUFACTURED),
                cells.get(LedgerColumn.WATER_CAPACITY), cells.get(LedgerColumn.TARE),
                cells.get(LedgerColumn.SERVICE_PRESSURE)).read(asOf);
        for (var refusal : reading.refusals()) {
            cells.problems().refuse(column(refusal), refusal.code(), refusal.found(), refusal.accepted());
        }
        for (var remark : reading.remarks()) {
            cells.problems().remark(column(remark), remark.code(), remark.found(), remark.accepted());
        }
        return reading.marks();
    }

    private static LedgerColumn column(FieldError error) {
        return BY_POINTER.getOrDefault(error.pointer(), LedgerColumn.SPECIFICATION);
    }

    /** Blank is filled in where the specification leaves one kind only, never where it leaves a choice. */
    private static @Nullable String kind(Cells cells) {
        var specification = cells.get(LedgerColumn.SPECIFICATION);
        if (!cells.isBlank(LedgerColumn.KIND) || specification == null || specification.length() > 100
                || !(Specification.tryParse(specification) instanceof Parsed<Specification>(var value, var _))) {
            // an unknown specification is told of by itself: the kind is not asked for on top of it
            return cells.isBlank(LedgerColumn.KIND) ? "CYLINDER" : cells.get(LedgerColumn.KIND);
        }
        var possible = Kinds.of(value);
        if (possible.size() == 1) {
            return possible.iterator().next().name();
        }
        cells.refuse(LedgerColumn.KIND, "MISSING", "for " + value + ": " + possible.stream().map(Enum::name)
                .collect(Collectors.joining(" or ")));
        return possible.iterator().next().name();
    }

    private static @Nullable Tag tag(Cells cells) {
        var text = cells.get(LedgerColumn.TAG);
        return text == null ? null : switch (Tag.tryParse(text)) {
            case Parsed<Tag>(var tag, var _) -> tag;
            case Rejected<Tag>(int _, var found, var expected) -> {
                cells.refuse(LedgerColumn.TAG, "INVALID_TAG", expected + "; there stands " + found);
                yield null;
            }
        };
    }

    private @Nullable LocalDate filledOn(Cells cells, Days days) {
        var day = cells.day(LedgerColumn.FILLED_ON);
        // with the zone of its site, the day may have begun there that has not in UTC
        if (day != null && day.isAfter(asOf) && cells.isBlank(LedgerColumn.SITE_ZONE)) {
            cells.refuse(LedgerColumn.FILLED_ON, "IN_THE_FUTURE", "a day not after " + asOf);
            return null;
        }
        return day != null && days.admit(cells, LedgerColumn.FILLED_ON, day) ? day : null;
    }

    private static @Nullable LocalDate day(Cells cells, LedgerColumn column, Days days) {
        var day = cells.day(column);
        return day != null && days.admit(cells, column, day) ? day : null;
    }
}
