package org.collarbook.intake;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;

import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Particulars;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.jspecify.annotations.Nullable;

/** Reads which cells of a row rest on somebody's declaration, and whose: the n-th of each column belong together. */
final class DeclaredReader {

    /** Beside facts: what is marked so in the column of tests rests on it. */
    static final String TESTS = "tests";
    static final String NO_STATEMENT = "Told by a ledger.";
    private static final int LONGEST = 2000;
    private static final String WORDS = Arrays.stream(DeclarableFact.values()).map(DeclarableFact::word)
            .collect(Collectors.joining(", ")) + ", " + TESTS;

    private final LocalDate asOf;

    DeclaredReader(LocalDate asOf) {
        this.asOf = asOf;
    }

    List<RowDeclaration> read(Cells cells, Particulars told) {
        var jurisdiction = jurisdiction(cells);
        var facts = list(cells, LedgerColumn.DECLARED);
        var by = list(cells, LedgerColumn.DECLARED_BY);
        var on = list(cells, LedgerColumn.DECLARED_ON);
        var statements = list(cells, LedgerColumn.DECLARED_STATEMENT);
        same(cells, LedgerColumn.DECLARED_BY, by, facts);
        same(cells, LedgerColumn.DECLARED_ON, on, facts);
        if (!statements.isEmpty()) {
            same(cells, LedgerColumn.DECLARED_STATEMENT, statements, facts);
        }
        var read = new ArrayList<RowDeclaration>(facts.size());
        var all = EnumSet.noneOf(DeclarableFact.class);
        for (int i = 0; i < facts.size() && !cells.problems().areKeepingOut(); i++) {
            var resting = facts(cells, facts.get(i), all, told, jurisdiction);
            var day = day(cells, on.get(i));
            if (day != null) {
                read.add(
                        new RowDeclaration(said(by.get(i), day, statements.isEmpty() ? NO_STATEMENT : statements.get(i),
                                resting, told, jurisdiction), resting));
            }
        }
        if (jurisdiction != null && !all.contains(DeclarableFact.JURISDICTION)) {
            cells.refuse(LedgerColumn.JURISDICTION, "NOT_DECLARED", "blank, or named in the column declared with who"
                    + " says so; of a site, site_jurisdiction tells it");
        }
        return read;
    }

    /** The tests among what a declaration says: that a RIN was seen, or how a bare month was tested. */
    static RowDeclaration with(RowDeclaration one, int number, List<LedgerEntry.LastTest> tests) {
        var resting = tests.stream().filter(test -> test.declared() == number).toList();
        if (resting.isEmpty()) {
            return one;
        }
        var said = one.said();
        boolean seen = resting.stream().anyMatch(test -> test.done().rinSeen());
        var method = resting.stream().filter(test -> test.asStamped() == null).map(test -> test.done().method())
                .filter(Objects::nonNull).findFirst();
        return new RowDeclaration(new Declaration(said.id(), said.declaredBy(), said.declaredOn(), said.statement(),
                said.jurisdiction(), said.coated(), said.lading(), said.exclusive(), said.corrosionFree(),
                said.marksLegible(), said.owned(), said.ownerConsent(), seen ? true : null, method.orElse(null), null),
                one.facts());
    }

    private static List<String> list(Cells cells, LedgerColumn column) {
        var accepted = "one for each declaration, apart by ; (in double quotes where it has one of ; | in it), each of"
                + " at most " + LONGEST + " printable characters";
        var items = cells.list(column, accepted);
        if (items.stream().anyMatch(item -> item.head().isEmpty() || !item.more().isEmpty()
                || item.head().length() > LONGEST || item.head().codePoints().anyMatch(Character::isISOControl))) {
            cells.refuse(column, "INVALID_LIST", accepted);
            return List.of();
        }
        return items.stream().map(ListItem::head).toList();
    }

    private static void same(Cells cells, LedgerColumn column, List<String> given, List<String> facts) {
        if (given.size() != facts.size() && !cells.problems().areKeepingOut()) {
            cells.refuse(column, given.isEmpty() ? "MISSING" : "COUNTS_DIFFER", "as many as the column declared has, "
                    + facts.size());
        }
    }

    private Set<DeclarableFact> facts(Cells cells, String words, Set<DeclarableFact> all, Particulars told,
            @Nullable Jurisdiction jurisdiction) {
        var facts = EnumSet.noneOf(DeclarableFact.class);
        for (var text : words.split(",")) {
            var word = text.strip().toLowerCase(Locale.ROOT).replace(' ', '_');
            var fact = Arrays.stream(DeclarableFact.values()).filter(one -> one.word().equals(word)).findFirst();
            if (fact.isEmpty() && !word.equals(TESTS)) {
                cells.refuse(LedgerColumn.DECLARED, "UNKNOWN_WORD", "of each declaration what rests on it, apart by"
                        + " commas: " + WORDS);
            } else if (fact.isPresent() && !all.add(fact.get())) {
                cells.refuse(LedgerColumn.DECLARED, "TOLD_TWICE", "each fact once");
            } else if (fact.isPresent() && value(fact.get(), told, jurisdiction) == null) {
                cells.refuse(LedgerColumn.DECLARED, "MISSING", "a fact that the row tells; the cell of " + word
                        + " is blank");
            } else {
                fact.ifPresent(facts::add);
            }
        }
        return facts;
    }

    private static @Nullable Object value(DeclarableFact fact, Particulars told, @Nullable Jurisdiction jurisdiction) {
        return fact == DeclarableFact.JURISDICTION ? jurisdiction : fact.of(told);
    }

    private @Nullable LocalDate day(Cells cells, String text) {
        var day = Days.day(text);
        if (day == null || day.isAfter(asOf.plusDays(1))) {
            cells.refuse(LedgerColumn.DECLARED_ON, day == null ? "INVALID_DATE" : "IN_THE_FUTURE",
                    "the day of each declaration as YYYY-MM-DD, not after " + asOf);
            return null;
        }
        if (day.isBefore(Declaration.EARLIEST)) {
            cells.refuse(LedgerColumn.DECLARED_ON, "OUT_OF_RANGE", "a day not before " + Declaration.EARLIEST);
            return null;
        }
        return day;
    }

    private static Declaration said(String by, LocalDate on, String statement, Set<DeclarableFact> facts,
            Particulars told, @Nullable Jurisdiction jurisdiction) {
        return new Declaration(RowDeclaration.NO_ID, by, on, statement,
                facts.contains(DeclarableFact.JURISDICTION) ? jurisdiction : null,
                truth(DeclarableFact.COATED, facts, told),
                facts.contains(DeclarableFact.LADING) ? (Lading) DeclarableFact.LADING.of(told) : null,
                truth(DeclarableFact.EXCLUSIVE, facts, told), truth(DeclarableFact.CORROSION_FREE, facts, told),
                truth(DeclarableFact.MARKS_LEGIBLE, facts, told), truth(DeclarableFact.OWNED, facts, told),
                truth(DeclarableFact.OWNER_CONSENT, facts, told), null, null, null);
    }

    private static @Nullable Boolean truth(DeclarableFact fact, Set<DeclarableFact> facts, Particulars told) {
        return facts.contains(fact) ? (Boolean) fact.of(told) : null;
    }

    private static @Nullable Jurisdiction jurisdiction(Cells cells) {
        var text = cells.get(LedgerColumn.JURISDICTION);
        if (text == null || Jurisdiction.isWellFormed(text)) {
            return text == null ? null : new Jurisdiction(text);
        }
        cells.refuse(LedgerColumn.JURISDICTION, "INVALID_JURISDICTION", "a code such as US or CA-BC");
        return null;
    }
}
