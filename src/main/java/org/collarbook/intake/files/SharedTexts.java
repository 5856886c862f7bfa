package org.collarbook.intake.files;

import java.io.BufferedOutputStream;
import java.io.Closeable;
import java.io.DataOutputStream;
import java.io.IOException;
import java.lang.foreign.Arena;
import java.lang.foreign.MemorySegment;
import java.lang.foreign.ValueLayout;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

import org.jspecify.annotations.Nullable;

/**
 * The texts that the cells of a workbook share, by number: spooled to two files and read where they lie, so that memory
 * does not grow with them.
 */
final class SharedTexts implements Closeable {

    private static final ValueLayout.OfLong OFFSET = ValueLayout.JAVA_LONG_UNALIGNED.withOrder(ByteOrder.BIG_ENDIAN);

    private final Path texts;
    private final Path offsets;
    private final Arena arena = Arena.ofShared();
    private final MemorySegment text;
    private final MemorySegment offset;

    private SharedTexts(Path texts, Path offsets) throws IOException {
        this.texts = texts;
        this.offsets = offsets;
        text = mapped(texts);
        offset = mapped(offsets);
    }

    private MemorySegment mapped(Path file) throws IOException {
        try (var channel = FileChannel.open(file, StandardOpenOption.READ)) {
            return channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size(), arena);
        }
    }

    static SharedTexts spooled(@Nullable String part, Workbook workbook) throws IOException {
        var texts = Files.createTempFile("ledger", ".texts");
        var offsets = Files.createTempFile("ledger", ".offsets");
        try {
            if (part != null) {
                spool(part, workbook, texts, offsets);
            }
            return new SharedTexts(texts, offsets);
        } catch (IOException | RuntimeException refused) {
            Files.deleteIfExists(texts);
            Files.deleteIfExists(offsets);
            throw refused;
        }
    }

    private static void spool(String part, Workbook workbook, Path texts, Path offsets) throws IOException {
        try (var tags = workbook.open(part);
                var text = new BufferedOutputStream(Files.newOutputStream(texts));
                var offset = new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(offsets)))) {
            long at = 0;
            offset.writeLong(at);
            while (tags.toTag()) {
                if (tags.isAt("si")) {
                    var bytes = tags.text().getBytes(StandardCharsets.UTF_8);
                    text.write(bytes);
                    at += bytes.length;
                    offset.writeLong(at);
                }
            }
        }
    }

    String get(String number) {
        try {
            long at = Long.BYTES * (long) Integer.parseInt(number.strip());
            long from = offset.get(OFFSET, at);
            long to = offset.get(OFFSET, at + Long.BYTES);
            return new String(text.asSlice(from, to - from).toArray(ValueLayout.JAVA_BYTE), StandardCharsets.UTF_8);
        } catch (NumberFormatException | IndexOutOfBoundsException missing) {
            throw FileFault.brokenWorkbook("a cell names a shared text that is not there");
        }
    }

    @Override
    public void close() throws IOException {
        arena.close();
        Files.deleteIfExists(texts);
        Files.deleteIfExists(offsets);
    }
}
