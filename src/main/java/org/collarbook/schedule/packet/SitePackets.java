package org.collarbook.schedule.packet;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.access.Caller;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.compliance.assessment.AssessmentAnswer;
import org.collarbook.compliance.sites.KnownSites;
import org.collarbook.custody.PlaceDisputes;
import org.collarbook.custody.Places;
import org.collarbook.custody.web.SiteResponse;
import org.collarbook.platform.Caution;
import org.collarbook.platform.JournalAudit;
import org.collarbook.platform.JournalAudit.Chain;
import org.collarbook.platform.Problem;
import org.collarbook.registry.Absorbed;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RuleBook;
import org.collarbook.schedule.packet.ContainerPacket.Proof;
import org.collarbook.schedule.packet.SitePacket.LastTest;
import org.collarbook.schedule.packet.SitePacket.SiteLine;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Gathers what is on record of a site and all that stands there, in as many statements however many they are. */
@Component
class SitePackets {

    static final int MOST = 2000;

    private final Places places;
    private final PlaceDisputes disputes;
    private final KnownSites sites;
    private final KnownContainers containers;
    private final Absorbed absorbed;
    private final RuleBook rules;
    private final JournalAudit audit;
    private final JdbcClient jdbc;
    private final Clock clock;

    SitePackets(Places places, PlaceDisputes disputes, KnownSites sites, KnownContainers containers, Absorbed absorbed,
            RuleBook rules, JournalAudit audit, JdbcClient jdbc, Clock clock) {
        this.places = places;
        this.disputes = disputes;
        this.sites = sites;
        this.containers = containers;
        this.absorbed = absorbed;
        this.rules = rules;
        this.audit = audit;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem an id that no site has, and one with too many containers. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public SitePacket of(UUID id, Caller by) {
        var site = places.site(id).orElseThrow(() -> Problem.notFound("site").asException());
        var now = clock.instant();
        var today = LocalDate.ofInstant(now, site.zone());
        var since = standingAt(id);
        var customer = site.customerId();
        var lines = lines(since, today);
        return new SitePacket(now, by.id(), SiteResponse.from(site),
                customer == null ? null : places.customer(customer).orElseThrow(), today, RuleBookAnswer.from(rules),
                lines.size(), lines, disputes.claimedBy(List.of(id)), sites.requirements(site, Set.of(), today),
                lines.stream().allMatch(SiteLine::chainWhole), Proof.HOW, Caution.TEXT);
    }

    private Map<UUID, Instant> standingAt(UUID site) {
        var since = new LinkedHashMap<UUID, Instant>();
        jdbc.sql("""
                select p.container_id, p.since from placement p
                where p.site_id = ? and not exists (select from absorbed a where a.container_id = p.container_id)
                limit ?""").params(site, MOST + 1).query(row -> {
            since.put(row.getObject(1, UUID.class), row.getObject(2, OffsetDateTime.class).toInstant());
        });
        if (since.size() > MOST) {
            throw Whole.tooLong("More than " + MOST
                    + " containers stand at this site, and no packet is made of more. Ask"
                    + " for the packet of each container that is asked about; /api/schedule?site=" + site
                    + " tells what is due on all of them, and /api/audit/verification proves all chains by pages.");
        }
        return since;
    }

    private List<SiteLine> lines(Map<UUID, Instant> since, LocalDate today) {
        if (since.isEmpty()) {
            return List.of();
        }
        var ids = since.keySet();
        var merged = absorbed.byEach(ids);
        var chains = audit.chains(Stream.concat(ids.stream(), merged.values().stream().flatMap(Collection::stream))
                .toList());
        var ofEach = ids.stream().collect(Collectors.toMap(Function.identity(), id -> Stream
                .concat(Stream.of(id), merged.getOrDefault(id, List.of()).stream()).map(chains::get).toList()));
        return containers.byIds(ids).stream()
                .map(known -> line(known, Objects.requireNonNull(since.get(known.id())), today,
                        Objects.requireNonNull(ofEach.get(known.id()))))
                .sorted(Comparator.comparing(SiteLine::kind).thenComparing(SiteLine::serial)
                        .thenComparing(SiteLine::id))
                .toList();
    }

    private SiteLine line(KnownContainer known, Instant since, LocalDate today, List<Chain> chains) {
        var container = known.container();
        var marks = container.marks();
        var said = AssessmentAnswer.of(known.facts(), today, rules, false);
        return new SiteLine(known.id(), marks.kind(), marks.specification().value().toString(),
                marks.maker() == null ? null : marks.maker().toString(), marks.serial().value().value(),
                marks.manufactured() == null ? null : marks.manufactured().value(), container.size().word(),
                container.tag() == null ? null : container.tag().value(), since, said.status(), said.mayFill(),
                said.mayUse(), said.requirements(), said.reasons().stream().map(Reason::code).distinct().toList(),
                last(known.facts().requalifications()), chains.stream().allMatch(Chain::isWhole),
                chains.stream().mapToLong(Chain::entries).sum());
    }

    private static @Nullable LastTest last(@Nullable List<Requalification> history) {
        return history == null
                ? null
                : history.stream().max(Comparator.comparing(Requalification::month))
                        .map(done -> new LastTest(done.month(), done.method(),
                                done.rin() == null ? null : done.rin().value(), done.result()))
                        .orElse(null);
    }
}
