package org.collarbook.schedule.packet;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.assessment.AssessmentAnswer;
import org.collarbook.custody.FillFlags;
import org.collarbook.custody.Fills;
import org.collarbook.custody.web.FillResponse;
import org.collarbook.holds.Holds;
import org.collarbook.holds.web.HoldResponse;
import org.collarbook.inspection.RecordedTest;
import org.collarbook.inspection.RecordedTests;
import org.collarbook.inspection.Repairs;
import org.collarbook.inspection.web.RepairResponse;
import org.collarbook.inspection.web.RequalificationResponse;
import org.collarbook.registry.fittings.PartResponse;
import org.collarbook.registry.fittings.Parts;
import org.collarbook.registry.fittings.Stop;
import org.collarbook.registry.fittings.Stops;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Retention;
import org.collarbook.regulation.Retention.RecordKind;
import org.collarbook.schedule.packet.ContainerPacket.Kept;
import org.collarbook.schedule.packet.ContainerPacket.KeptTest;
import org.collarbook.schedule.packet.ContainerPacket.PacketFills;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What was done to a container, found of it and put into it; whole, with what was corrected. */
@Component
class WhatWasDone {

    private final RecordedTests tests;
    private final Repairs repairs;
    private final Holds holds;
    private final Fills fills;
    private final FillFlags flags;
    private final Parts parts;
    private final Stops stops;
    private final Retention retention;

    WhatWasDone(RecordedTests tests, Repairs repairs, Holds holds, Fills fills, FillFlags flags, Parts parts,
            Stops stops, Retention retention) {
        this.tests = tests;
        this.repairs = repairs;
        this.holds = holds;
        this.fills = fills;
        this.flags = flags;
        this.parts = parts;
        this.stops = stops;
        this.retention = retention;
    }

    private static boolean isCylinder(KnownContainer container) {
        return container.container().marks().kind() == ContainerKind.CYLINDER;
    }

    Kept kept(KnownContainer container) {
        var kept = retention.of(isCylinder(container) ? RecordKind.REQUALIFICATION : RecordKind.TANK_TEST);
        return new Kept(kept.until(), kept.citation());
    }

    List<KeptTest> requalifications(KnownContainer container, AssessmentAnswer said) {
        var id = container.id();
        var all = Whole.list("its requalifications", id, "requalifications?all=true",
                rows -> tests.of(id, true, null, rows));
        var governing = isCylinder(container)
                ? all.stream().filter(WhatWasDone::counts).findFirst().orElse(null)
                : null;
        return all.stream().map(one -> new KeptTest(RequalificationResponse.from(one),
                one.equals(governing) ? lastDay(said) : null)).toList();
    }

    private static boolean counts(RecordedTest test) {
        return test.corrected() == null && test.requalification().result() == Result.PASSED;
    }

    /** 49 CFR 180.215(b): until the period ends, for nobody has requalified it since. */
    private static @Nullable LocalDate lastDay(AssessmentAnswer said) {
        return said.requirements().stream().filter(clock -> clock.requirement() == Requirement.SHELL)
                .map(AssessmentAnswer.RequirementAnswer::lastDay).filter(day -> day != null)
                .max(LocalDate::compareTo).orElse(null);
    }

    List<RepairResponse> repairs(UUID id) {
        return Whole.list("its repairs", id, "repairs?all=true", rows -> repairs.of(id, true, null, null, rows))
                .stream().map(RepairResponse::from).toList();
    }

    List<HoldResponse> holds(KnownContainer container) {
        var id = container.id();
        var kind = container.container().marks().kind();
        return Whole.list("its holds", id, "holds", rows -> holds.of(id, false, null, rows)).stream()
                .map(hold -> HoldResponse.from(hold, hold.reason().liftedBy(kind))).toList();
    }

    PacketFills fills(UUID id) {
        var last = fills.of(id, null, 1).stream().findFirst().orElse(null);
        var found = Whole.list("its fills", id, "fills", rows -> flags.of(id, rows.limit()));
        var ofLast = last == null
                ? null
                : FillResponse.from(last,
                        found.stream().filter(flag -> flag.fillId().equals(last.id())).toList());
        return new PacketFills(fills.count(id), ofLast, found.stream().map(flag -> flag.fillId()).distinct().count(),
                found);
    }

    List<PartResponse> parts(UUID id) {
        return Whole.list("its parts", id, "parts", rows -> parts.of(id, null, rows)).stream()
                .map(PartResponse::from).toList();
    }

    List<Stop> stops(UUID id) {
        return Whole.list("its times out of service", id, "out-of-service", rows -> stops.of(id, null, rows));
    }
}
