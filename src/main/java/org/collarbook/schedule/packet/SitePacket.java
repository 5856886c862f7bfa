package org.collarbook.schedule.packet;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.compliance.assessment.AssessmentAnswer.RequirementAnswer;
import org.collarbook.compliance.sites.SiteRequirementsAnswer;
import org.collarbook.custody.DisputedPlace;
import org.collarbook.custody.NamedCustomer;
import org.collarbook.custody.web.SiteResponse;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What stands at a site, as it was at one moment: a line for each container, and what is asked of the site itself.
 * {@code placeDisputed} are the containers that this site and another one claim. {@code whole}: every chain is.
 */
record SitePacket(Instant snapshotAt, UUID askedBy, SiteResponse site, @Nullable NamedCustomer customer,
        LocalDate asOf, RuleBookAnswer ruleBook, int count, List<SiteLine> containers,
        List<DisputedPlace> placeDisputed, SiteRequirementsAnswer extinguishers, boolean whole, String howToVerify,
        String caution) {

    /** The latest that counts: null is a missing fact. */
    @Schema(name = "SitePacketTest")
    record LastTest(YearMonth month, @Nullable Method method, @Nullable String rin, Requalification.Result result) {}

    /**
     * {@code requalified} is null where none is on record. {@code chainWhole}: nothing that was recorded of it, nor of a
     * record merged into it, was altered since.
     */
    @Schema(name = "SitePacketContainer")
    record SiteLine(UUID id, ContainerKind kind, String specification, @Nullable String maker, String serial,
            @Nullable YearMonth manufactured, String size, @Nullable String tag, Instant since, Status status,
            boolean mayFill, boolean mayUse, List<RequirementAnswer> requirements, List<ReasonCode> reasons,
            @Nullable LastTest requalified, boolean chainWhole, long chainEntries) {}
}
