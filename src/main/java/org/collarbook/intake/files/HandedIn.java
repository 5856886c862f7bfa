package org.collarbook.intake.files;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;

import org.jspecify.annotations.Nullable;

/**
 * A file as it was handed in, and the plain text in it: CSV in UTF-8, of a sheet one line a row. Length and digest are
 * those of the file, and known once the text was read to its end.
 */
public final class HandedIn implements Closeable {

    /** The longest row of a ledger, in characters. */
    public static final int LONGEST_ROW = 64 * 1024;

    private final Digested file;
    private final InputStream text;
    private final @Nullable String sheet;

    HandedIn(Digested file, InputStream text, @Nullable String sheet) {
        this.file = file;
        this.text = text;
        this.sheet = sheet;
    }

    public InputStream text() {
        return text;
    }

    public long bytes() {
        return file.bytes();
    }

    public String sha256() {
        return file.sha256();
    }

    /** The sheet that is read; null where the file is no workbook. */
    public @Nullable String sheet() {
        return sheet;
    }

    @Override
    public void close() throws IOException {
        text.close();
    }
}
