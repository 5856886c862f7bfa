package org.collarbook.schedule.packet;

import java.io.OutputStream;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.platform.JournalAudit.Chain;
import org.collarbook.platform.paper.Sheet;
import org.collarbook.registry.PlaceClaim;
import org.collarbook.registry.fittings.PartResponse;

/** The packet of a container on paper: the same contents in the same order. */
final class ContainerPacketPdf {

    static final String CAUTION = "From recorded facts; it sees no dent. Follow local codes and the authority having"
            + " jurisdiction. Unknown is do-not-fill.";

    private final ContainerPacket packet;
    private final PacketTables tables;

    private ContainerPacketPdf(ContainerPacket packet, PacketTables tables) {
        this.packet = packet;
        this.tables = tables;
    }

    /** The stream is left open. */
    static void write(ContainerPacket packet, OutputStream out) {
        var about = packet.identity().container();
        var head = about.specification() + ", serial " + about.serial() + ", maker "
                + PacketWords.known(about.maker()) + ", made " + PacketWords.known(about.manufactured()) + ", tag "
                + (about.tag() == null ? "none" : about.tag()) + ", id " + about.id();
        try (var sheet = Sheet.open(out, "Audit packet: container " + about.serial() + ", "
                + PacketWords.moment(packet.snapshotAt()), head, CAUTION,
                packet.snapshotAt().atZone(ZoneOffset.UTC))) {
            new ContainerPacketPdf(packet, new PacketTables(sheet)).write();
        }
    }

    private void write() {
        first();
        new IdentityTables(tables).write(packet.identity());
        new AssessmentTables(tables).write(packet.assessment());
        new RecordTables(tables).write(packet);
        fills();
        place();
        fittings();
        proof();
        tables.leftOut();
        tables.words(packet.caution());
    }

    private void first() {
        var about = packet.identity().container();
        var said = packet.assessment();
        tables.title("Audit packet: container " + about.serial(),
                "All that is on record of this container at one moment. Months are YYYY-MM, moments in UTC.");
        tables.facts("At a glance").line("Snapshot taken", PacketWords.moment(packet.snapshotAt()))
                .line("Asked by key", packet.askedBy())
                .strong("Status on " + said.asOf(), said.status().toString().replace('_', ' '))
                .line("Due", String.join("\n", said.requirements().stream().map(clock -> AssessmentTables.name(clock)
                        + ": " + AssessmentTables.due(clock).replace("\n", ", ")).toList()))
                .line("May be", "filled: " + PacketWords.yes(said.mayFill()) + ";  carried: "
                        + PacketWords.yes(said.mayCarry()) + ";  carried empty: "
                        + PacketWords.yes(said.mayCarryEmpty()) + ";  used: " + PacketWords.yes(said.mayUse()))
                .line("Record's chain", whole(packet.proof().whole()))
                .hash("Rule book", said.ruleBook().hash())
                .line("Evaluator", "version " + said.ruleBook().engineVersion()).end();
    }

    static String whole(boolean whole) {
        return whole
                ? "whole: no recorded fact was altered since"
                : "BROKEN: something that was recorded was altered since; see the proof at the end";
    }

    private void fills() {
        var fills = packet.fills();
        var last = fills.last();
        var table = tables.facts("Fills").line("On record", fills.count()).line("Flagged later", fills.flagged());
        if (last != null) {
            table.line("Last fill", last.filledAt() == null ? last.filledOn() : PacketWords.moment(last.filledAt()))
                    .line("Net after", PacketWords.unit(last.netAfterLb(), "lb") + "; most allowed "
                            + PacketWords.unit(last.maxNetLb(), "lb") + "; gross "
                            + PacketWords.unit(last.grossLb(), "lb"))
                    .line("Filled by", last.filledBy())
                    .line("Looked at, leak checked", PacketWords.yes(last.lookedAt()) + ", "
                            + PacketWords.yes(last.leakChecked()) + "; leak found: "
                            + PacketWords.yes(last.leakFound()))
                    .line("Refused for", PacketWords.plain(last.refusedFor()))
                    .line("Record", last.id() + ", recorded " + PacketWords.moment(last.recordedAt()));
        }
        fills.flags().forEach(flag -> table.line("Flag of " + PacketWords.moment(flag.recordedAt()),
                "of fill " + flag.fillId() + ", flag " + flag.id() + "\n" + (flag.reasons().isEmpty()
                        ? "allowed after all"
                        : String.join("\n", flag.reasons().stream().map(PacketWords::reason).toList()))));
        table.end();
    }

    private void place() {
        var place = packet.place();
        var table = tables.facts("Where it stands");
        if (place == null) {
            table.line("Site", PacketWords.UNKNOWN);
        } else {
            table.line("Site", PacketWords.site(place.site(), place.customer()))
                    .line("Since", PacketWords.moment(place.since()));
        }
        table.lines("Claimed by several", packet.placeDisputed().stream().map(ContainerPacketPdf::claim).toList())
                .end();
    }

    private static String claim(PlaceClaim claim) {
        return claim.site().code() + ", " + claim.site().name() + ", address "
                + PacketWords.known(claim.site().address()) + ", id "
                + claim.site().id() + (claim.recorded()
                        ? ", moved there "
                        : ", seen there first ")
                + PacketWords.moment(claim.since());
    }

    private void fittings() {
        var table = tables.facts("Parts, and times out of service")
                .lines("Parts", packet.parts().stream().map(ContainerPacketPdf::part).toList());
        var stops = new ArrayList<String>();
        packet.outOfService().forEach(stop -> stops.add("from " + stop.since() + ": " + stop.reason()
                + (stop.returnedOn() == null ? "; not returned" : "; returned on " + stop.returnedOn())
                + (stop.note() == null ? "" : ": " + stop.note()) + "; record " + stop.id() + " of "
                + PacketWords.moment(stop.recordedAt())));
        table.lines("Out of service", stops).end();
    }

    private static String part(PartResponse part) {
        return PacketWords.plain(part.kind()) + ", maker " + PacketWords.known(part.maker()) + ", model "
                + PacketWords.known(part.model()) + ", serial " + PacketWords.known(part.serial()) + ", made "
                + PacketWords.known(part.manufactured()) + ", fitted " + part.fittedOn()
                + (part.labelledFor() == null ? "" : ", labelled for " + PacketWords.plain(part.labelledFor()))
                + (part.inPlace()
                        ? ""
                        : ", taken out " + part.removedOn() + ": " + part.removedFor()
                                + (Boolean.TRUE.equals(part.removedForGood()) ? " (nothing belongs in its place)" : ""))
                + "; record " + part.id() + " of " + PacketWords.moment(part.recordedAt());
    }

    private void proof() {
        for (var chain : packet.proof().chains()) {
            var own = chain.container().equals(packet.identity().container().id());
            tables.facts("Proof: the chain of " + (own ? "this record" : "a record merged into it"))
                    .line("Record", chain.container()).line("Entries", chain.entries())
                    .hash("First hash", chain.firstHash()).hash("Last hash", chain.lastHash())
                    .strong("Verified now", chain.isWhole() ? "whole" : "BROKEN")
                    .lines("What does not hold", broken(chain)).end();
        }
        tables.facts("How to verify this proof").line("How", packet.proof().howToVerify()).end();
    }

    private static List<String> broken(Chain chain) {
        return chain.broken().stream()
                .map(one -> "entry " + one.seq() + ", " + one.kind() + (one.subject() == null
                        ? ""
                        : " " + one.subject()) + ": " + one.what())
                .toList();
    }
}
