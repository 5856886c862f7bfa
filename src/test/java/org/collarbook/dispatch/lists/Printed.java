package org.collarbook.dispatch.lists;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;

/**
 * A list as it comes out of the printer: its pages as text with places, and as pictures that a scanner reads. The
 * document is read from memory, so it need not be closed.
 */
record Printed(PullList list, byte[] file, PDDocument document, List<String> texts) {

    static final int DPI = 200;
    static final Clock CLOCK = Clock.fixed(Instant.parse("2026-12-02T20:41:00Z"), ZoneOffset.UTC);

    static Printed of(PullList list) {
        var out = new ByteArrayOutputStream();
        new PullListPdf(CLOCK).write(list, out);
        try {
            var document = Loader.loadPDF(out.toByteArray());
            return new Printed(list, out.toByteArray(), document, texts(document));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int pages() {
        return document.getNumberOfPages();
    }

    String text() {
        return String.join("", texts);
    }

    /** Of each page, without any white space: a text may be wrapped anywhere. */
    private static List<String> texts(PDDocument document) throws IOException {
        var texts = new ArrayList<String>();
        for (int page = 1; page <= document.getNumberOfPages(); page++) {
            var stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            texts.add(squeezed(stripper.getText(document)));
        }
        return texts;
    }

    static String squeezed(String text) {
        return text.replaceAll("[\\s\\u00a0]+", "");
    }

    List<TextPosition> positions(int page) throws IOException {
        var all = new ArrayList<TextPosition>();
        var stripper = new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> positions) throws IOException {
                all.addAll(positions);
                super.writeString(text, positions);
            }
        };
        stripper.setStartPage(page + 1);
        stripper.setEndPage(page + 1);
        stripper.getText(document);
        return all;
    }

    BufferedImage picture(int page) throws IOException {
        return new PDFRenderer(document).renderImageWithDPI(page, DPI, ImageType.GRAY);
    }

    /** What ZXing's reader finds in the column of the codes, from top to bottom. */
    static List<String> scanned(BufferedImage picture) {
        int left = 60 * DPI / 72;
        int width = 66 * DPI / 72;
        int height = picture.getHeight();
        int[] pixels = picture.getRGB(left, 0, width, height, null, 0, width);
        var bitmap = new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(width, height, pixels)));
        try {
            var found = new QRCodeMultiReader().decodeMultiple(bitmap, Map.of(DecodeHintType.TRY_HARDER, true));
            return Arrays.stream(found).sorted(Comparator.comparing(Printed::top)).map(Result::getText).toList();
        } catch (NotFoundException _) {
            return List.of();
        }
    }

    private static float top(Result result) {
        return result.getResultPoints()[1].getY();
    }

    @Override
    public String toString() {
        return list.asked().title();
    }
}
