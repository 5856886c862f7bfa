package org.collarbook.intake;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/**
 * Lays the declarations of rows over containers: each fact that nothing else tells rests on whoever is said to have
 * declared it. What the register has otherwise stays. Rows of one batch that say the same share one declaration.
 */
final class DeclaredFit {

    private final KnownBesides known;
    private final Map<Declaration, UUID> opened = new HashMap<>();

    DeclaredFit(KnownBesides known) {
        this.known = known;
    }

    /** The declarations of a row, in its order, each with its id; null stands for one that does not count. */
    List<@Nullable Declaration> identified(LedgerEntry row, Problems problems) {
        if (row.declared().isEmpty()) {
            return List.of();
        }
        var identified = new ArrayList<@Nullable Declaration>(row.declared().size());
        for (var one : row.declared()) {
            var said = one.said();
            if (known.declarations().areWithdrawn(said)) {
                problems.remark(LedgerColumn.DECLARED_BY, "DECLARATION_WITHDRAWN", said.declaredBy() + " on "
                        + said.declaredOn(), "a declaration that stands: what rests on this one is not known");
                identified.add(null);
            } else if (said.isBefore(row.marks())) {
                tellThatItCameBefore(said, row, LedgerColumn.DECLARED_ON, problems);
                identified.add(null);
            } else {
                var recorded = known.declarations().ids().get(said);
                identified.add(said.as(recorded == null
                        ? opened.computeIfAbsent(said, words -> Ids.next())
                        : recorded));
            }
        }
        return identified;
    }

    /** What the ledger's declaration says of the container of a row: nothing, where that was made after its day. */
    static @Nullable Declaration counting(@Nullable Declaration said, LedgerEntry row, Problems problems) {
        if (said == null || !said.isBefore(row.marks())) {
            return said;
        }
        tellThatItCameBefore(said, row, LedgerColumn.MANUFACTURED, problems);
        return null;
    }

    private static void tellThatItCameBefore(Declaration said, LedgerEntry row, LedgerColumn at, Problems problems) {
        var made = row.marks().manufactured();
        problems.remark(at, "DECLARED_BEFORE_MANUFACTURE", said.declaredBy() + " on " + said.declaredOn(),
                "a declaration made in or after " + (made == null ? "its month" : made.value())
                        + ", when the container was made: what rests on this one stays as it was, or not known");
    }

    NewContainer laid(NewContainer over, @Nullable RegisteredContainer before, LedgerEntry row,
            List<@Nullable Declaration> identified, Problems problems) {
        var laid = over;
        for (int i = 0; i < identified.size(); i++) {
            var said = identified.get(i);
            if (said != null) {
                laid = laid(laid, before, said, row.declared().get(i).facts(), problems);
            }
        }
        return laid;
    }

    private NewContainer laid(NewContainer over, @Nullable RegisteredContainer before, Declaration said,
            Set<DeclarableFact> facts, Problems problems) {
        var filled = EnumSet.noneOf(DeclarableFact.class);
        for (var fact : facts) {
            var told = fact.of(said);
            var had = had(over, before, fact);
            if (had == null && !isElses(over, fact, told)) {
                filled.add(fact);
            } else if (told == null || !told.equals(had)) {
                problems.remark(LedgerColumn.DECLARED, "DECLARATION_KEPT", fact.word() + " " + told,
                        "what the register has stays: a declaration tells what is not known");
            }
        }
        return filled.isEmpty() ? over : over.declared(said, filled);
    }

    private @Nullable Object had(NewContainer over, @Nullable RegisteredContainer before, DeclarableFact fact) {
        if (fact != DeclarableFact.JURISDICTION) {
            return fact.of(over.particulars());
        }
        var own = before == null ? null : known.governed().get(before.declaration());
        return own == null ? over.further().jurisdiction() : new Jurisdiction(own);
    }

    /** Somebody is recorded as its owner: nobody declares it the distributor's own beside that. */
    private static boolean isElses(NewContainer over, DeclarableFact fact, @Nullable Object told) {
        return fact == DeclarableFact.OWNED && over.particulars().ownership().owner() != null
                && Boolean.TRUE.equals(told);
    }
}
