package org.collarbook.intake.files;

import java.io.EOFException;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;

/** The bytes of one part of a workbook, proved by their checksum at the end. */
final class Part extends FilterInputStream {

    /** More than this of one tag, comment or the like is no workbook, and would be gathered in memory. */
    private static final int MOST_AT_ONCE = 1 << 20;

    private final ZipEntry entry;
    private final Budget budget;
    private final CRC32 crc = new CRC32();
    private long unpacked;
    private int left = MOST_AT_ONCE;

    Part(InputStream in, ZipEntry entry, Budget budget) {
        super(in);
        this.entry = entry;
        this.budget = budget;
    }

    String name() {
        return entry.getName();
    }

    /** What was read so far was used, so as much again may be read. */
    void used() {
        left = MOST_AT_ONCE;
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int count = unpack(buffer, offset, length);
        if (count < 0) {
            if (crc.getValue() != entry.getCrc()) {
                throw FileFault.brokenWorkbook("the checksum of " + entry.getName() + " is another");
            }
            return count;
        }
        unpacked += count;
        left -= count;
        crc.update(buffer, offset, count);
        budget.take(count, unpacked, entry.getCompressedSize());
        if (left < 0) {
            throw FileFault.brokenWorkbook("a tag of " + entry.getName() + " has more than " + MOST_AT_ONCE
                    + " bytes");
        }
        return count;
    }

    private int unpack(byte[] buffer, int offset, int length) throws IOException {
        try {
            return super.read(buffer, offset, length);
        } catch (ZipException | EOFException damaged) {
            throw FileFault.brokenWorkbook(entry.getName() + " is damaged");
        }
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
