package org.collarbook.schedule.packet;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.compliance.assessment.AssessmentAnswer;
import org.collarbook.custody.PlaceDisputes;
import org.collarbook.custody.Places;
import org.collarbook.custody.web.SiteResponse;
import org.collarbook.platform.Caution;
import org.collarbook.platform.JournalAudit;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Absorbed;
import org.collarbook.regulation.RuleBook;
import org.collarbook.schedule.packet.ContainerPacket.PacketPlace;
import org.collarbook.schedule.packet.ContainerPacket.Proof;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Gathers what is on record of one container, all of it as of one moment. */
@Component
class ContainerPackets {

    private final KnownContainers known;
    private final Absorbed absorbed;
    private final Requirements requirements;
    private final RuleBook rules;
    private final WhoItIs identity;
    private final WhatWasDone done;
    private final Places places;
    private final PlaceDisputes disputes;
    private final JournalAudit audit;
    private final JdbcClient jdbc;
    private final Clock clock;

    ContainerPackets(KnownContainers known, Absorbed absorbed, Requirements requirements, RuleBook rules,
            WhoItIs identity, WhatWasDone done, Places places, PlaceDisputes disputes, JournalAudit audit,
            JdbcClient jdbc, Clock clock) {
        this.known = known;
        this.absorbed = absorbed;
        this.requirements = requirements;
        this.rules = rules;
        this.identity = identity;
        this.done = done;
        this.places = places;
        this.disputes = disputes;
        this.audit = audit;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem an id that no container has, and a record that was merged into another. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public ContainerPacket of(UUID id, Caller by) {
        absorbed.into(id).ifPresent(counts -> {
            throw Problem.conflict("MERGED", "Record " + id + " was merged into " + counts + ", which counts for this"
                    + " container: ask for the packet of that one.").with("container", counts).asException();
        });
        var container = known.byId(id).orElseThrow(() -> Problem.notFound("container").asException());
        var said = AssessmentAnswer.of(container.facts(), requirements.today(container), rules, false)
                .resting(container);
        var where = container.where();
        return new ContainerPacket(clock.instant(), by.id(), identity.of(container), said,
                done.kept(container), done.requalifications(container, said), done.repairs(id), done.holds(container),
                done.fills(id), where == null ? null : place(id, where.siteId(), where.customerId()),
                disputes.of(List.of(id)).getOrDefault(id, List.of()), done.parts(id), done.stops(id), proof(id),
                Caution.TEXT);
    }

    private PacketPlace place(UUID id, UUID site, @Nullable UUID customer) {
        var since = jdbc.sql("select since from placement where container_id = ?").param(id)
                .query(OffsetDateTime.class).single();
        return new PacketPlace(SiteResponse.from(places.site(site).orElseThrow()),
                customer == null ? null : places.customer(customer).orElseThrow(), since.toInstant());
    }

    private Proof proof(UUID id) {
        var ids = new ArrayList<>(List.of(id));
        ids.addAll(absorbed.by(id));
        var chains = audit.chains(ids);
        return Proof.of(ids.stream().map(chains::get).toList());
    }
}
