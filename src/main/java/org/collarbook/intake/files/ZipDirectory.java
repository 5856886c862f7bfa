package org.collarbook.intake.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** A zip's list of contents, which the JDK reads into memory whole (APPNOTE.TXT 4.3.16, end of central directory). */
final class ZipDirectory {

    private static final int SIGNATURE = 0x0605_4b50;
    private static final int LENGTH = 22;
    private static final int LONGEST_COMMENT = 0xffff;
    private static final int SIZE_AT = 12;
    /** Some ten thousand entries; a workbook has a few dozen. */
    private static final long MOST = 1 << 20;

    private ZipDirectory() {}

    /** Of a 64-bit zip, which nobody needs for a ledger, the size is told as 4 GB and so refused. */
    static void requireShort(Path file) throws IOException {
        try (var channel = FileChannel.open(file, StandardOpenOption.READ)) {
            int length = (int) Math.min(channel.size(), LENGTH + LONGEST_COMMENT);
            var end = ByteBuffer.allocate(length).order(ByteOrder.LITTLE_ENDIAN);
            channel.position(channel.size() - length);
            while (end.hasRemaining() && channel.read(end) >= 0) {
                // read to the end
            }
            for (int at = length - LENGTH; at >= 0; at--) {
                if (end.getInt(at) == SIGNATURE) {
                    if ((end.getInt(at + SIZE_AT) & 0xffff_ffffL) > MOST) {
                        throw FileFault.brokenWorkbook("it has too many parts");
                    }
                    return;
                }
            }
            throw FileFault.brokenWorkbook("the zip is damaged or cut off");
        }
    }
}
