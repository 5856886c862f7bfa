package org.collarbook.schedule.packet;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.holds.web.HoldResponse;
import org.collarbook.inspection.Corrected;
import org.collarbook.inspection.web.RepairResponse;
import org.collarbook.inspection.web.RequalificationResponse.RequalifierOfRecord;
import org.collarbook.schedule.packet.ContainerPacket.KeptTest;
import org.jspecify.annotations.Nullable;

/** What was done at the bench and what kept the container out of service, on paper; a table for each record. */
record RecordTables(PacketTables tables) {

    void write(ContainerPacket packet) {
        tables.facts("Requalifications and repairs").line("Requalifications", packet.requalifications().size())
                .line("Repairs", packet.repairs().size())
                .line("Records are kept until", packet.kept().until() + "\n"
                        + PacketWords.cited(packet.kept().citation()))
                .end();
        packet.requalifications().forEach(this::requalification);
        packet.repairs().forEach(this::repair);
        if (packet.holds().isEmpty()) {
            tables.facts("Holds").line("Holds", PacketWords.NONE).end();
        }
        packet.holds().forEach(this::hold);
    }

    private void requalification(KeptTest kept) {
        var done = kept.requalification();
        var table = tables.facts("Requalification of " + (done.performedOn() == null
                ? done.month()
                : done.performedOn()) + ": " + PacketWords.plain(done.method()) + ", "
                + (done.corrected() == null
                        ? done.result()
                        : "CORRECTED, counts no more"));
        table.line("Month, method, result", done.month() + ", " + PacketWords.plain(done.method()) + ", "
                + PacketWords.plain(done.result()) + (done.star() ? ", star" : "") + (done.plus() ? ", plus" : ""))
                .line("RIN", done.rin());
        if (done.asStamped() != null) {
            table.line("As stamped", done.asStamped());
        }
        if (done.record() == null) {
            table.line("Contents", "no more than the mark is on record");
        } else {
            table.line("Requalifier", requalifier(done.record().requalifier()));
            new SheetLines(table).write(done.record());
        }
        if (kept.keepUntil() != null) {
            table.line("Kept until at least", kept.keepUntil());
        }
        if (done.corrects() != null) {
            table.line("Takes the place of", "record " + done.corrects().requalification() + ": "
                    + done.corrects().reason());
        }
        table.line("Stands", corrected(done.corrected()))
                .line("Record", done.id() + ", recorded " + PacketWords.moment(done.recordedAt()) + " by key "
                        + done.recordedBy())
                .end();
    }

    private static String requalifier(@Nullable RequalifierOfRecord facility) {
        return facility == null
                ? PacketWords.UNKNOWN
                : facility.name() + ", RIN " + facility.rin() + ", approved from " + facility.approval().from()
                        + " through " + facility.approval().expires();
    }

    private static String corrected(@Nullable Corrected corrected) {
        return corrected == null
                ? "yes"
                : "NO: it was a mistake (" + corrected.reason() + "), corrected "
                        + PacketWords.moment(corrected.recordedAt()) + " by key " + corrected.recordedBy()
                        + (corrected.replacedBy() == null
                                ? "; void"
                                : "; record " + corrected.replacedBy() + " took its place");
    }

    private void repair(RepairResponse done) {
        tables.facts("Repair of " + done.performedOn() + ": " + PacketWords.plain(done.kind()))
                .line("Work", done.work())
                .line("Seams", PacketWords.plain(done.seams()) + "; original marks transferred: "
                        + PacketWords.yes(done.marksTransferred()))
                .line("Repairer", requalifier(done.requalifier())).line("Certification", done.certification())
                .line("Kept until at least", done.keepUntil() + ", " + PacketWords.cited(done.kept()))
                .line("Stands", corrected(done.corrected()))
                .line("Record", done.id() + ", recorded " + PacketWords.moment(done.recordedAt()) + " by key "
                        + done.recordedBy())
                .end();
    }

    private void hold(HoldResponse hold) {
        var lift = hold.lift();
        var table = tables.facts("Hold: " + PacketWords.plain(hold.reason()) + (lift == null
                ? ", STANDS"
                : ", lifted"));
        table.line("Why", hold.text() + (hold.note() == null ? "" : " Note: " + hold.note())).line("Where that stands",
                PacketWords.cited(hold.citation()))
                .line("Held since", PacketWords.moment(hold.occurredAt()) + "; recorded "
                        + PacketWords.moment(hold.recordedAt()) + " by key " + hold.recordedBy());
        if (hold.recall() != null) {
            table.line("Placed by recall", hold.recall());
        }
        table.line("Record", hold.id());
        table.line("What lifts it", PacketWords.plain(hold.liftedBy()));
        table.lines(lift == null ? "Lifted" : "Lifted by", lift == null ? List.of("no: it stands") : lifted(lift))
                .end();
    }

    private static List<String> lifted(HoldResponse.LiftResponse lift) {
        var told = new ArrayList<String>();
        told.add(PacketWords.plain(lift.by()) + (lift.requalification() == null
                ? ""
                : ", record " + lift.requalification()));
        if (lift.name() != null) {
            told.add(lift.name() + ", " + PacketWords.known(lift.qualification()));
        }
        if (lift.note() != null) {
            told.add(lift.note());
        }
        told.add("recorded " + PacketWords.moment(lift.recordedAt()) + " by key " + lift.recordedBy());
        return told;
    }
}
