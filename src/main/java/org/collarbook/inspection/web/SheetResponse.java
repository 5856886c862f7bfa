package org.collarbook.inspection.web;

import java.math.BigDecimal;
import java.util.List;

import org.collarbook.inspection.RecordedTest.Sheet;
import org.collarbook.inspection.bench.Attempt;
import org.collarbook.inspection.bench.Checked;
import org.collarbook.inspection.bench.CondemningGround;
import org.collarbook.inspection.bench.Expansion;
import org.collarbook.inspection.bench.Remark;
import org.collarbook.inspection.bench.VisualItem;
import org.collarbook.inspection.web.RequalificationResponse.RequalifierOfRecord;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/** The full contents of a record, and why its result is what it is. */
public record SheetResponse(@Nullable RequalifierOfRecord requalifier, List<ItemResponse> visual,
        @Nullable Integer markedPressurePsig, @Nullable Integer testPressurePsig,
        @Nullable BigDecimal minimumTestPressurePsig, @Nullable ExpansionResponse expansion,
        List<RepeatResponse> repeats, @Nullable String coating, @Nullable String owner, String operator,
        @Nullable BigDecimal tareLb, @Nullable BigDecimal tareLossPercent, List<CondemningGround> grounds,
        @Nullable String disposition, @Nullable String note, List<RemarkResponse> reasons) {

    public record ItemResponse(VisualItem item, Checked.Finding finding, @Nullable String note) {}

    /** {@code permanentPercent} is rounded up to the hundredth; the result rests on the exact ratio. */
    public record ExpansionResponse(String total, String elastic, String permanent,
            @Nullable BigDecimal permanentPercent,
            @Nullable BigDecimal limitPercent) {

        static @Nullable ExpansionResponse from(@Nullable Expansion measured, @Nullable BigDecimal percent,
                @Nullable BigDecimal limit) {
            return measured == null
                    ? null
                    : new ExpansionResponse(cm3(measured.total()), cm3(measured.elastic()), cm3(measured.permanent()),
                            percent, limit);
        }

        private static String cm3(BigDecimal volume) {
            return volume.stripTrailingZeros().toPlainString() + " cm3";
        }
    }

    public record RepeatResponse(int testPressurePsig, @Nullable ExpansionResponse expansion, Attempt.Reason reason,
            String note) {

        static RepeatResponse from(Attempt one) {
            return new RepeatResponse(one.testPressurePsig(), ExpansionResponse.from(one.expansion(), null, null),
                    one.reason(), one.note());
        }
    }

    public record RemarkResponse(Remark.Code code, String text, @Nullable Citation citation) {}

    public static @Nullable SheetResponse from(@Nullable Sheet sheet) {
        return sheet == null
                ? null
                : new SheetResponse(RequalifierOfRecord.from(sheet.requalifier()),
                        sheet.visual().stream().map(one -> new ItemResponse(one.item(), one.finding(), one.note()))
                                .toList(),
                        sheet.markedPressurePsig(), sheet.testPressurePsig(), sheet.minimumPsig(),
                        ExpansionResponse.from(sheet.expansion(), sheet.permanentPercent(), sheet.limitPercent()),
                        sheet.repeats().stream().map(RepeatResponse::from).toList(), sheet.coating(), sheet.owner(),
                        sheet.operator(), sheet.tareLb(), sheet.tareLossPercent(), sheet.grounds(),
                        sheet.disposition(), sheet.note(),
                        sheet.remarks().stream()
                                .map(one -> new RemarkResponse(one.code(), one.text(), one.citation())).toList());
    }
}
