package org.collarbook.intake.files;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;

/**
 * Opens a ledger's file in whichever form it was handed in: CSV, the same gzipped, or a workbook (ISO/IEC 29500, .xlsx),
 * told apart by their first bytes. Memory does not grow with the file.
 */
@Component
public class LedgerFiles {

    private static final int BUFFER = 4 * Beginning.LENGTH;

    private final long mostUnpacked;

    public LedgerFiles(@Value("${collarbook.ledger.most-unpacked:2GB}") DataSize mostUnpacked) {
        this.mostUnpacked = mostUnpacked.toBytes();
    }

    /** {@code sheet} names the sheet of a workbook; what is thrown leaves nothing behind. */
    public HandedIn open(InputStream handedIn, @Nullable String sheet) throws IOException {
        try {
            return opened(handedIn, sheet);
        } catch (IOException | RuntimeException refused) {
            handedIn.close();
            throw refused;
        }
    }

    private HandedIn opened(InputStream handedIn, @Nullable String sheet) throws IOException {
        var file = new Digested(handedIn);
        InputStream content = metered(file, file);
        var beginning = beginning(content);
        if (beginning.isGzip()) {
            content = metered(new Gunzip(content), file);
            beginning = beginning(content);
            if (beginning.isGzip()) {
                throw FileFault.brokenGzip("is gzipped twice");
            }
        }
        if (beginning.isZip()) {
            return workbook(file, content, sheet);
        }
        beginning.requireText();
        if (sheet != null) {
            throw Problem.invalid("sheet", "NO_SHEETS", sheet, "only with a workbook (.xlsx)").asException();
        }
        return new HandedIn(file, new ShortLines(content), null);
    }

    private InputStream metered(InputStream content, Digested file) {
        return new BufferedInputStream(new Metered(content, new Budget(mostUnpacked), file::bytes), BUFFER);
    }

    private HandedIn workbook(Digested file, InputStream content, @Nullable String wanted) throws IOException {
        var workbook = Workbook.spooled(content, new Budget(mostUnpacked));
        try {
            content.close();
            var sheet = workbook.sheet(wanted);
            return new HandedIn(file, new SheetText(workbook, sheet, new Budget(mostUnpacked)), sheet.name());
        } catch (IOException | RuntimeException refused) {
            workbook.close();
            throw refused;
        }
    }

    private static Beginning beginning(InputStream content) throws IOException {
        content.mark(Beginning.LENGTH);
        var bytes = content.readNBytes(Beginning.LENGTH);
        content.reset();
        return new Beginning(bytes);
    }
}
