package org.collarbook.schedule.packet;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.assessment.AssessmentAnswer;
import org.collarbook.custody.FillFlag;
import org.collarbook.custody.NamedCustomer;
import org.collarbook.custody.web.FillResponse;
import org.collarbook.custody.web.SiteResponse;
import org.collarbook.holds.web.HoldResponse;
import org.collarbook.inspection.web.RepairResponse;
import org.collarbook.inspection.web.RequalificationResponse;
import org.collarbook.platform.JournalAudit.Chain;
import org.collarbook.registry.PlaceClaim;
import org.collarbook.registry.Tags;
import org.collarbook.registry.fittings.PartResponse;
import org.collarbook.registry.fittings.Stop;
import org.collarbook.registry.web.ContainerResponse;
import org.collarbook.registry.web.CorrectionResponse;
import org.collarbook.registry.web.IdentityActResponse;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * All that is on record of one container, as it was at one moment. Each part is the same record that its own endpoint
 * answers with; {@code place} is null where nobody knows where it stands.
 */
record ContainerPacket(Instant snapshotAt, UUID askedBy, PacketIdentity identity, AssessmentAnswer assessment,
        Kept kept, List<KeptTest> requalifications, List<RepairResponse> repairs, List<HoldResponse> holds,
        PacketFills fills, @Nullable PacketPlace place, List<PlaceClaim> placeDisputed, List<PartResponse> parts,
        List<Stop> outOfService, Proof proof, String caution) {

    /**
     * {@code mergedRecords} were found to be this container; {@code corrections} and {@code acts} tell what was done about
     * which one it is, the latest first.
     */
    @Schema(name = "PacketIdentity")
    record PacketIdentity(ContainerResponse container, List<Declared> declarations, List<Tags.Borne> formerTags,
            List<ContainerResponse> mergedRecords, List<CorrectionResponse> corrections,
            List<IdentityActResponse> acts) {}

    /** Who answers for the facts that nobody has read off the container. */
    @Schema(name = "PacketDeclaration")
    record Declared(UUID id, String declaredBy, LocalDate declaredOn, String statement, List<String> facts) {}

    /** How long the records of its requalifications are kept at least. */
    @Schema(name = "PacketRetention")
    record Kept(String until, @Nullable Citation citation) {}

    /** {@code keepUntil} is told of the record that the present due month rests on; see {@code kept} for the others. */
    @Schema(name = "PacketRequalification")
    record KeptTest(RequalificationResponse requalification, @Nullable LocalDate keepUntil) {}

    /** {@code flags}: what became known of any of its fills later, the latest first; {@code flagged}: of how many. */
    @Schema(name = "PacketFills")
    record PacketFills(long count, @Nullable FillResponse last, long flagged, List<FillFlag> flags) {}

    @Schema(name = "PacketPlace")
    record PacketPlace(SiteResponse site, @Nullable NamedCustomer customer, Instant since) {}

    /** {@code chains}: the container's own, and that of each record merged into it. */
    @Schema(name = "PacketProof")
    record Proof(boolean whole, List<Chain> chains, String howToVerify) {

        static final String HOW = "Ask GET /api/audit/verification?container={id} at any time: it works out every hash"
                + " of the chain anew (SHA-256 over the hash before it and the recorded fact), compares each entry with"
                + " the fact as it stands in its table, and the entries and hashes printed here must still be among"
                + " those of GET /api/containers/{id}/history.";

        static Proof of(List<Chain> chains) {
            return new Proof(chains.stream().allMatch(Chain::isWhole), chains, HOW);
        }
    }
}
