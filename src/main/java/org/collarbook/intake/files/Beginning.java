package org.collarbook.intake.files;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** What the first bytes of a file tell: names say nothing, and are wrong as often as right. */
final class Beginning {

    static final int LENGTH = 4096;

    private static final Map<String, String> OTHERS = new LinkedHashMap<>();

    static {
        OTHERS.put("\u0089PNG", "a picture (PNG)");
        OTHERS.put("\u00ff\u00d8\u00ff", "a picture (JPEG)");
        OTHERS.put("GIF8", "a picture (GIF)");
        OTHERS.put("%PDF", "a PDF");
        OTHERS.put("7z\u00bc\u00af", "an archive (7z)");
        OTHERS.put("Rar!", "an archive (RAR)");
        OTHERS.put("BZh", "a file packed by bzip2");
        OTHERS.put("\u00fd7zXZ", "a file packed by xz");
        OTHERS.put("(\u00b5/\u00fd", "a file packed by zstd");
    }

    private final byte[] bytes;
    private final String letters;

    Beginning(byte[] bytes) {
        this.bytes = bytes;
        letters = new String(bytes, StandardCharsets.ISO_8859_1);
    }

    boolean isGzip() {
        return letters.startsWith("\u001f\u008b");
    }

    boolean isZip() {
        return letters.startsWith("PK\u0003\u0004") || letters.startsWith("PK\u0005\u0006");
    }

    /** Refuses what cannot be text in UTF-8, as far as its first line tells. */
    void requireText() {
        if (letters.startsWith("\u00d0\u00cf\u0011\u00e0")) {
            throw FileFault.of("OLD_OR_LOCKED_WORKBOOK", "The file is a workbook of the old form (.xls), or one with a"
                    + " password.", ".xls, or a workbook with a password",
                    "a workbook saved as .xlsx without a password, or CSV in UTF-8");
        }
        if (letters.startsWith("\u00ff\u00fe") || letters.startsWith("\u00fe\u00ff") || looksLikeUtf16()) {
            throw FileFault.wrongEncoding(1, "in UTF-16, not UTF-8");
        }
        var other = other();
        if (other != null) {
            throw FileFault.of("NOT_A_LEDGER", "The file is " + other + ", not a ledger.", other,
                    "CSV in UTF-8, the same gzipped, or a workbook (.xlsx)");
        }
    }

    private boolean looksLikeUtf16() {
        return bytes.length >= 4 && (bytes[0] == 0 && bytes[2] == 0 && bytes[1] != 0 && bytes[3] != 0
                || bytes[1] == 0 && bytes[3] == 0 && bytes[0] != 0 && bytes[2] != 0);
    }

    private @Nullable String other() {
        for (var other : OTHERS.entrySet()) {
            if (letters.startsWith(other.getKey())) {
                return other.getValue();
            }
        }
        return letters.lines().findFirst().orElse("").chars().anyMatch(c -> c < ' ' && c != '\t')
                ? "no text: its first line has control characters"
                : null;
    }
}
