package org.collarbook.intake.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.util.unit.DataSize;

/** Workbooks of ten times as many rows, each text another: how fast they are read, and in how much memory. */
@Tag("bench")
class LargeWorkbookBenchmark {

    private static final int COLUMNS = 25;

    @Test
    void memoryDoesNotGrowWithTheRows(@TempDir Path folder) throws IOException {
        for (int rows : new int[]{20_000, 200_000}) {
            var file = folder.resolve(rows + ".xlsx");
            write(file, rows);
            System.gc();
            ManagementFactory.getMemoryPoolMXBeans().forEach(pool -> pool.resetPeakUsage());
            long before = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed();
            long start = System.nanoTime();
            long lines = 0;
            long live = 0;
            try (var in = new LedgerFiles(DataSize.ofGigabytes(2)).open(Files.newInputStream(file), null)) {
                var buffer = new byte[1 << 16];
                for (int count = in.text().read(buffer); count >= 0; count = in.text().read(buffer)) {
                    for (int i = 0; i < count; i++) {
                        lines += buffer[i] == '\n' ? 1 : 0;
                    }
                }
                double seconds = (System.nanoTime() - start) / 1e9;
                System.gc();
                live = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() - before;
                System.out.printf(Locale.ROOT, "bench workbook of %d rows x %d, %d MB: %.0f rows/s, %d KB live at its"
                        + " end, peak of the heap %d MB%n", rows, COLUMNS, Files.size(file) >> 20, rows / seconds,
                        live >> 10, peak() >> 20);
            }
            assertEquals(rows + 1, lines);
        }
    }

    private static long peak() {
        return ManagementFactory.getMemoryPoolMXBeans().stream().filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToLong(pool -> pool.getPeakUsage().getUsed()).sum();
    }

    /** Written by hand, since the libraries keep all shared texts in memory. */
    private static void write(Path file, int rows) throws IOException {
        try (var zip = new ZipOutputStream(new BufferedOutputStream(Files.newOutputStream(file)))) {
            var relations = "<Relationships>%s</Relationships>";
            var relation = "<Relationship Id=\"%s\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/"
                    + "relationships/%s\" Target=\"%s\"/>";
            part(zip, "_rels/.rels", relations.formatted(relation.formatted("a", "officeDocument", "book.xml")));
            part(zip, "_rels/book.xml.rels", relations.formatted(relation.formatted("a", "worksheet", "sheet.xml")
                    + relation.formatted("b", "sharedStrings", "texts.xml")));
            part(zip, "book.xml", "<workbook xmlns:r=\"r\"><sheets><sheet name=\"a\" r:id=\"a\"/></sheets></workbook>");
            zip.putNextEntry(new ZipEntry("sheet.xml"));
            put(zip, "<worksheet><sheetData>");
            for (int row = 0; row <= rows; row++) {
                var cells = new StringBuilder("<row r=\"" + (row + 1) + "\">");
                for (int column = 0; column < COLUMNS; column++) {
                    cells.append("<c t=\"s\"><v>").append(row * COLUMNS + column).append("</v></c>");
                }
                put(zip, cells.append("</row>").toString());
            }
            put(zip, "</sheetData></worksheet>");
            zip.closeEntry();
            zip.putNextEntry(new ZipEntry("texts.xml"));
            put(zip, "<sst>");
            for (int text = 0; text < (rows + 1) * COLUMNS; text++) {
                put(zip, "<si><t>text " + Integer.toHexString(text * 0x9E37_79B1) + "</t></si>");
            }
            put(zip, "</sst>");
            zip.closeEntry();
        }
    }

    private static void part(ZipOutputStream zip, String name, String content) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        put(zip, content);
        zip.closeEntry();
    }

    private static void put(ZipOutputStream zip, String text) throws IOException {
        zip.write(text.getBytes(StandardCharsets.UTF_8));
    }
}
