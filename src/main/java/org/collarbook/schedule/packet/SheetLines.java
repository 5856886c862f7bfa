package org.collarbook.schedule.packet;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.inspection.web.SheetResponse;
import org.collarbook.inspection.web.SheetResponse.ExpansionResponse;
import org.jspecify.annotations.Nullable;

/** The full contents of one requalification record, line by line; what its method does not measure is left out. */
record SheetLines(PacketTables.Facts table) {

    void write(SheetResponse sheet) {
        table.line("Operator", sheet.operator()).line("Owner as told then", sheet.owner())
                .lines("Visual items", sheet.visual().stream()
                        .map(one -> PacketWords.noted(PacketWords.plain(one.item()) + " " + PacketWords.plain(one
                                .finding()), one.note()))
                        .toList());
        line("Pressures", pressures(sheet));
        line("Expansion", expansion(sheet.expansion()));
        if (!sheet.repeats().isEmpty()) {
            table.lines("Repeated tests", sheet.repeats().stream().map(one -> one.testPressurePsig() + " psig, "
                    + PacketWords.noted(PacketWords.plain(one.reason()), one.note()) + "; " + PacketWords.known(
                            expansion(one.expansion())))
                    .toList());
        }
        line("Coating", sheet.coating());
        line("Tare", sheet.tareLb() == null
                ? null
                : sheet.tareLb() + " lb; loss " + PacketWords.unit(sheet.tareLossPercent(), "%"));
        if (!sheet.grounds().isEmpty()) {
            table.line("Condemned for", PacketWords.plain(sheet.grounds()));
        }
        line("Disposition", sheet.disposition());
        line("Note", sheet.note());
        table.lines("Why this result", sheet.reasons().stream().map(why -> why.code() + ": " + why.text()
                + (why.citation() == null ? "" : " " + PacketWords.cited(why.citation()))).toList());
    }

    private void line(String name, @Nullable String value) {
        if (value != null) {
            table.line(name, value);
        }
    }

    private static @Nullable String pressures(SheetResponse sheet) {
        var told = new ArrayList<String>();
        pressure(told, "marked service", sheet.markedPressurePsig());
        pressure(told, "test", sheet.testPressurePsig());
        pressure(told, "least test", sheet.minimumTestPressurePsig());
        return told.isEmpty() ? null : String.join("; ", told);
    }

    private static void pressure(List<String> told, String name, @Nullable Object psig) {
        if (psig != null) {
            told.add(name + " " + psig + " psig");
        }
    }

    private static @Nullable String expansion(@Nullable ExpansionResponse measured) {
        return measured == null
                ? null
                : "total " + measured.total() + ", elastic " + measured.elastic() + ", permanent "
                        + measured.permanent() + (measured.permanentPercent() == null
                                ? ""
                                : "; permanent " + measured.permanentPercent() + " % of total, limit "
                                        + PacketWords.unit(measured.limitPercent(), "%"));
    }
}
