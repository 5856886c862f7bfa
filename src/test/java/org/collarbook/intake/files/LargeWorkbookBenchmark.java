package org.collarbook.intake.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

import org.dhatim.fastexcel.Workbook;
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

    private static void write(Path file, int rows) throws IOException {
        try (var out = Files.newOutputStream(file); var workbook = new Workbook(out, "bench", null)) {
            var sheet = workbook.newWorksheet("a");
            for (int row = 0; row <= rows; row++) {
                for (int column = 0; column < COLUMNS; column++) {
                    sheet.value(row, column, row == 0
                            ? "c" + column
                            : "text " + row * (column % 5 == 0 ? 31 : 1) + " "
                                    + column);
                }
            }
        }
    }
}
