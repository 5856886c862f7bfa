package org.collarbook.schedule.packet;

import java.util.List;

import org.collarbook.registry.web.ContainerResponse;
import org.collarbook.registry.web.CorrectionResponse;
import org.collarbook.registry.web.IdentityActResponse;
import org.collarbook.schedule.packet.ContainerPacket.PacketIdentity;
import org.jspecify.annotations.Nullable;

/** Which container it is, on paper. */
record IdentityTables(PacketTables tables) {

    void write(PacketIdentity identity) {
        var about = identity.container();
        marks(about);
        particulars(about);
        var table = tables.facts("Identity on record").line("Id", about.id())
                .line("Registered", PacketWords.moment(about.registeredAt()))
                .line("Tag", about.tag() == null ? "none" : about.tag())
                .lines("Former tags", identity.formerTags().stream().map(tag -> tag.tag() + " until "
                        + PacketWords.moment(tag.until()) + ": " + tag.reason()).toList())
                .lines("Merged records", identity.mergedRecords().stream().map(IdentityTables::merged).toList())
                .lines("Corrections", identity.corrections().stream().map(IdentityTables::correction).toList())
                .lines("Merges and splits", identity.acts().stream().map(IdentityTables::act).toList());
        if (identity.declarations().isEmpty()) {
            table.line("Declaration", "none: no fact rests on one");
        }
        identity.declarations().forEach(declaration -> table.line("Declaration", "\"" + declaration.statement()
                + "\" by " + declaration.declaredBy() + " on " + declaration.declaredOn() + " (" + declaration.id()
                + ")").lines("Facts resting on it", declaration.facts()));
        table.end();
    }

    private void marks(ContainerResponse about) {
        var table = tables.columns("Marks", new float[]{120, 210, 210}, "Mark", "As read", "Value");
        mark(table, about, "specification", about.specification());
        mark(table, about, "maker", about.maker());
        mark(table, about, "serial", about.serial());
        mark(table, about, "manufactured", about.manufactured());
        mark(table, about, "waterCapacity", about.waterCapacity());
        mark(table, about, "tare", about.tare());
        mark(table, about, "servicePressure", about.servicePressure());
        table.end();
    }

    private static void mark(PacketTables.Columns table, ContainerResponse about, String field,
            @Nullable Object value) {
        var name = PacketWords.plain(field.replaceAll("([A-Z])", "_$1"));
        table.row(name, about.asStamped().getOrDefault(field, PacketWords.known(value)), value);
    }

    private void particulars(ContainerResponse about) {
        var service = about.service();
        var permit = about.permit();
        tables.facts("Particulars").line("Kind and size", PacketWords.plain(about.kind()) + ", " + about.size())
                .line("Owner", ownership(about))
                .line("Marks legible", PacketWords.yes(about.marksLegible()) + "; collar read: "
                        + PacketWords.yes(about.collarRead()))
                .line("Coated, lined, steel", PacketWords.yes(about.coated()) + ", " + PacketWords.yes(about.lined())
                        + ", " + PacketWords.known(about.steel()))
                .line("Service", "lading " + PacketWords.known(service.lading()) + "; exclusively: "
                        + PacketWords.yes(service.exclusive()) + "; free of corrosive components: "
                        + PacketWords.yes(service.corrosionFree()) + "; use: " + PacketWords.plain(about.use()))
                .line("Installed", PacketWords.plain(about.installation()) + "; relief valve: "
                        + PacketWords.plain(about.reliefValve()))
                .line("Special permit", permit == null
                        ? "none on record"
                        : PacketWords.known(permit.number()) + ", expires " + PacketWords.day(permit.expires())
                                + ", years between requalifications " + PacketWords.known(permit.intervalYears()))
                .line("Other periods", "extended period: " + PacketWords.plain(about.extendedPeriod())
                        + "; due by a written scheme: " + PacketWords.known(about.schemeDue())
                        + "; declared out of service since: " + PacketWords.day(about.outOfServiceSince()))
                .end();
    }

    private static String ownership(ContainerResponse about) {
        return "the distributor's own: " + PacketWords.yes(about.owned()) + "; owner: "
                + PacketWords.known(about.owner()) + "; owner's consent to its being filled: "
                + PacketWords.yes(about.ownerConsent());
    }

    private static String merged(ContainerResponse one) {
        return one.specification() + ", maker " + PacketWords.known(one.maker()) + ", serial " + one.serial()
                + ", made " + PacketWords.known(one.manufactured()) + ", tag "
                + (one.tag() == null ? "none" : one.tag())
                + ", id " + one.id();
    }

    private static String correction(CorrectionResponse one) {
        var changes = one.changes().stream().map(change -> change.field() + " from "
                + PacketWords.known(change.was()) + " to " + PacketWords.known(change.became())).toList();
        return PacketWords.moment(one.recordedAt()) + ": " + String.join("; ", changes) + " (" + one.reason()
                + "); act " + one.id()
                + " by key " + one.recordedBy();
    }

    private static String act(IdentityActResponse act) {
        var undone = act.undone();
        return PacketWords.moment(act.recordedAt()) + ": " + PacketWords.plain(act.kind()) + " of " + act.container()
                + " and " + act.other() + " (" + act.reason() + "); act " + act.id() + " by key "
                + act.recordedBy() + setAside(act.setAside())
                + (undone == null
                        ? ""
                        : "; undone " + PacketWords.moment(undone.recordedAt()) + ": " + undone.reason());
    }

    private static String setAside(List<String> fields) {
        return fields.isEmpty() ? "" : "; set aside: " + String.join(", ", fields);
    }
}
