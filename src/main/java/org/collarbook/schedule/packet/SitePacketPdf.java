package org.collarbook.schedule.packet;

import java.io.OutputStream;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.compliance.assessment.AssessmentAnswer.RequirementAnswer;
import org.collarbook.compliance.sites.SiteRequirementsAnswer;
import org.collarbook.compliance.sites.SiteRequirementsAnswer.SiteExtinguisherAnswer;
import org.collarbook.platform.paper.Sheet;
import org.collarbook.schedule.packet.SitePacket.LastTest;
import org.collarbook.schedule.packet.SitePacket.SiteLine;
import org.jspecify.annotations.Nullable;

/** The packet of a site on paper: a row for each container. */
final class SitePacketPdf {

    private final SitePacket packet;
    private final PacketTables tables;

    private SitePacketPdf(SitePacket packet, PacketTables tables) {
        this.packet = packet;
        this.tables = tables;
    }

    /** The stream is left open. */
    static void write(SitePacket packet, OutputStream out) {
        var site = packet.site();
        var head = "Site " + site.code() + ", " + site.name() + ", id " + site.id();
        try (var sheet = Sheet.open(out, "Audit packet: site " + site.code() + ", "
                + PacketWords.moment(packet.snapshotAt()), head, ContainerPacketPdf.CAUTION,
                packet.snapshotAt().atZone(ZoneOffset.UTC))) {
            new SitePacketPdf(packet, new PacketTables(sheet)).write();
        }
    }

    private void write() {
        first();
        containers();
        citations();
        if (!packet.placeDisputed().isEmpty()) {
            disputed();
        }
        extinguishers(packet.extinguishers());
        tables.facts("How to verify").line("How", packet.howToVerify()).end();
        tables.leftOut();
        tables.words(packet.caution());
    }

    private void first() {
        var site = packet.site();
        tables.title("Audit packet: site " + site.code(), site.name()
                + ". All containers that stand here at one moment. Months are YYYY-MM, moments in UTC.");
        var byStatus = packet.containers().stream().collect(Collectors.groupingBy(SiteLine::status,
                TreeMap::new, Collectors.counting()));
        tables.facts("At a glance").line("Snapshot taken", PacketWords.moment(packet.snapshotAt()))
                .line("Asked by key", packet.askedBy()).line("Site", PacketWords.site(site, packet.customer()))
                .line("Containers", packet.count() + (byStatus.isEmpty()
                        ? ""
                        : ": " + byStatus.entrySet().stream()
                                .map(entry -> entry.getValue() + " " + PacketWords.plain(entry.getKey()))
                                .collect(Collectors.joining(", "))))
                .strong("Records' chains", packet.whole()
                        ? "all whole: no recorded fact was altered since"
                        : "BROKEN for " + packet.containers().stream().filter(one -> !one.chainWhole()).count()
                                + " of the containers, marked below")
                .hash("Rule book", packet.ruleBook().hash())
                .line("Evaluator", "version " + packet.ruleBook().engineVersion()).end();
    }

    private void containers() {
        var table = tables.columns("Containers, as of " + packet.asOf(), new float[]{140, 84, 196, 120},
                "Container", "Status", "Due, rule and citation", "Last requalification, record");
        if (packet.containers().isEmpty()) {
            table.row("none", "", "no container stands here", "");
        }
        packet.containers().forEach(one -> table.row(identity(one), status(one), due(one),
                requalified(one.requalified()) + "\nchain " + (one.chainWhole() ? "whole, " : "BROKEN, ")
                        + one.chainEntries() + " entries"));
        table.end();
    }

    private static String due(SiteLine one) {
        var clocks = one.requirements().stream().map(clock -> AssessmentTables.name(clock) + ": "
                + AssessmentTables.due(clock).replace("\n", ", ") + "\n" + PacketWords.known(clock.rule()) + ", "
                + PacketWords.section(clock.citation())).collect(Collectors.joining("\n"));
        return one.reasons().isEmpty() ? clocks : clocks + "\n" + PacketWords.plain(one.reasons());
    }

    /** In full, once each. */
    private void citations() {
        var cited = packet.containers().stream().flatMap(one -> one.requirements().stream())
                .map(RequirementAnswer::citation).filter(Objects::nonNull).map(PacketWords::cited).distinct().sorted()
                .toList();
        tables.facts("Citations, with the edition that was read").lines("Of the rules above", cited).end();
    }

    private static String identity(SiteLine one) {
        return one.serial() + "\n" + one.specification() + ", " + one.size() + "\nmaker " + PacketWords.known(one
                .maker()) + ", made " + PacketWords.known(one.manufactured()) + "\ntag "
                + (one.tag() == null ? "none" : one.tag()) + "\nhere since "
                + LocalDate.ofInstant(one.since(), ZoneOffset.UTC);
    }

    private static String status(SiteLine one) {
        return one.status().toString().replace('_', ' ') + "\nfill: " + PacketWords.yes(one.mayFill()) + "\nuse: "
                + PacketWords.yes(one.mayUse());
    }

    private static String requalified(@Nullable LastTest last) {
        return last == null
                ? PacketWords.NONE
                : last.month() + ", " + PacketWords.plain(last.method()) + "\nRIN " + PacketWords.known(last.rin())
                        + ", " + PacketWords.plain(last.result());
    }

    private void disputed() {
        var table = tables.columns("Places in dispute: this site and another one claim each of these",
                new float[]{180, 360}, "Container", "Claimed by");
        packet.placeDisputed().forEach(one -> table.row(one.serial() + "\n" + one.specification() + ", " + one.size(),
                one.claims().stream().map(claim -> claim.site().code() + ", " + claim.site().name()
                        + (claim.recorded() ? ", moved there " : ", seen there first ")
                        + PacketWords.moment(claim.since())).collect(Collectors.joining("\n"))));
        table.end();
    }

    private void extinguishers(SiteRequirementsAnswer asked) {
        var table = tables.columns("Fire extinguishers: " + PacketWords.plain(asked.outcome()), new float[]{140, 400},
                "Extinguisher", "Clocks and reasons");
        table.row("Asked of this site", asked(asked));
        if (asked.extinguishers().isEmpty()) {
            table.row("Extinguishers", PacketWords.NONE);
        }
        asked.extinguishers().forEach(one -> table.row(one.label() + "\n" + PacketWords.plain(one.type()),
                clocks(one)));
        table.end();
    }

    private static String asked(SiteRequirementsAnswer asked) {
        var rule = asked.rule() == null
                ? "no rule in force asks for one"
                : asked.rule() + ", " + PacketWords.cited(asked.citation());
        return Stream.concat(Stream.of(rule), asked.reasons().stream().map(PacketWords::reason))
                .collect(Collectors.joining("\n"));
    }

    private static String clocks(SiteExtinguisherAnswer one) {
        return PacketWords.plain(one.status()) + ", kept up: " + PacketWords.plain(one.keptUp()) + one.requirements()
                .stream().map(clock -> "\n" + PacketWords.plain(clock.requirement()) + ": " + PacketWords.plain(clock
                        .outcome()) + " " + (clock.due() == null ? "" : clock.due()) + ", " + PacketWords.cited(
                                clock.citation()))
                .collect(Collectors.joining());
    }
}
