package org.collarbook.compliance.declarations;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.declarations.DeclareRequest.DeclaredFacts;
import org.collarbook.compliance.declarations.GroupDeclaration.State;
import org.collarbook.compliance.declarations.GroupDeclaration.Withdrawal;
import org.collarbook.compliance.declarations.PreviewDeclaration.Contradiction;
import org.collarbook.platform.Page;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A declaration for a group, whose conditions are in {@code group} as they were told. */
record DeclarationAnswer(UUID id, String declaredBy, LocalDate declaredOn, String statement, DeclaredFacts facts,
        GroupRequest group, State state, Instant recordedAt, UUID recordedBy, @Nullable Withdrawal withdrawal) {

    /**
     * Of the containers in the group: for how many it is carried out, how many it filled anything of, how many knew
     * something of it already or say otherwise, of how many it says nothing, since they were made after its day (or their
     * record was merged before their turn came), and on how many a fact still rests on it.
     */
    record DeclarationCounts(int containers, int done, int filled, int known, int contradicting, int untouched,
            int resting) {}

    /** Of how many containers a fact was filled, was known already, or is recorded otherwise. */
    @Schema(name = "DeclaredFactCounts")
    record FactCounts(String fact, int filled, int known, int contradicting) {

        FactCounts plus(boolean isFilled, boolean isKnown, boolean isContradicting) {
            return new FactCounts(fact, filled + (isFilled ? 1 : 0), known + (isKnown ? 1 : 0),
                    contradicting + (isContradicting ? 1 : 0));
        }
    }

    /** With what became of its group; those that say otherwise by pages. */
    record AccountedDeclaration(DeclarationAnswer declaration, DeclarationCounts counts, List<FactCounts> facts,
            Page<Contradiction> contradictions, String caution) {}

    static DeclarationAnswer from(GroupDeclaration declared, GroupRequest group) {
        var said = declared.declaration();
        var lading = said.lading();
        var law = said.jurisdiction();
        return new DeclarationAnswer(said.id(), said.declaredBy(), said.declaredOn(), said.statement(),
                new DeclaredFacts(said.coated(), lading == null ? null : lading.name(), said.exclusive(),
                        said.corrosionFree(), said.marksLegible(), said.owned(), said.ownerConsent(),
                        law == null ? null : law.code()),
                group, declared.state(), declared.recordedAt(), declared.recordedBy(), declared.withdrawal());
    }
}
