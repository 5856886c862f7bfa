package org.collarbook.dispatch.lists;

import java.nio.charset.StandardCharsets;
import java.util.Map;

import org.jspecify.annotations.Nullable;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPCellEvent;
import com.lowagie.text.pdf.PdfPTable;

/** What is drawn into a cell: the box to tick, and the code to scan. */
final class PdfMarks {

    /** With the quiet zone, 18 mm: of the code itself about 14 mm are left. */
    static final float CODE = 51;
    private static final float BOX = 15;
    /** Modules of white on each side, as ISO/IEC 18004 asks (from memory). */
    private static final int QUIET = 4;

    private PdfMarks() {}

    static PdfPCellEvent box() {
        return (_, cell, canvases) -> {
            var canvas = canvases[PdfPTable.LINECANVAS];
            canvas.saveState();
            canvas.setLineWidth(1.2f);
            canvas.rectangle(cell.getLeft() + (cell.getWidth() - BOX) / 2, cell.getTop() - BOX - 8, BOX, BOX);
            canvas.stroke();
            canvas.restoreState();
        };
    }

    /** What a scan line takes: the tag as it is, or the container's id where it bears none. */
    static PdfPCellEvent code(@Nullable String tag, Object id) {
        var content = tag == null ? id.toString() : tag;
        return (_, cell, canvases) -> draw(modules(content), canvases[PdfPTable.LINECANVAS],
                cell.getLeft() + (cell.getWidth() - CODE) / 2, cell.getTop() - CODE - 2);
    }

    private static ByteMatrix modules(String content) {
        // an ASCII text is the same in any character set, and some scanners stumble over a named one
        boolean ascii = StandardCharsets.US_ASCII.newEncoder().canEncode(content);
        Map<EncodeHintType, Object> hints = ascii ? Map.of() : Map.of(EncodeHintType.CHARACTER_SET, "UTF-8");
        try {
            return Encoder.encode(content, ErrorCorrectionLevel.M, hints).getMatrix();
        } catch (WriterException e) {
            throw new IllegalStateException("no code holds " + content.length() + " characters", e);
        }
    }

    /** One path, filled once: no hairlines between its squares. */
    private static void draw(ByteMatrix modules, PdfContentByte canvas, float x, float y) {
        int size = modules.getWidth();
        float unit = CODE / (size + 2 * QUIET);
        canvas.saveState();
        canvas.concatCTM(unit, 0, 0, unit, x + QUIET * unit, y + QUIET * unit);
        for (int row = 0; row < size; row++) {
            int from = 0;
            while (from < size) {
                int to = from;
                while (to < size && modules.get(to, row) == 1) {
                    to++;
                }
                if (to > from) {
                    canvas.rectangle(from, size - 1f - row, to - from, 1);
                }
                from = to + 1;
            }
        }
        canvas.fill();
        canvas.restoreState();
    }
}
