package org.collarbook.intake;

import java.io.IOException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * Writes a made-up ledger of any length, for the demo, tests and figures: each line is worked out from the seed and its
 * number, so memory does not grow and the same seed writes the same ledger. {@code dirtShare} of the lines are such that
 * no register could accept them.
 */
record LedgerGenerator(long seed, LocalDate asOf, long rows, double dirtShare) {

    private static final long ROWS_PER_SITE = 84;
    private static final int SITES = 60;

    /** How many rows were written, and how many of them must be refused. */
    record Written(long rows, long spoiled) {}

    Written writeTo(Appendable out) throws IOException {
        out.append(String.join(",", LedgerColumn.words())).append("\r\n");
        var places = new InventedPlaces(seed, (int) Math.max(SITES, Math.min(rows / ROWS_PER_SITE, 1_000_000)));
        long spoiled = 0;
        for (long number = 0; number < rows; number++) {
            boolean isSpoiled = isSpoiled(number);
            spoiled += isSpoiled ? 1 : 0;
            out.append(isSpoiled ? spoiltLine(number, places) : line(cells(number, places))).append("\r\n");
        }
        return new Written(rows, spoiled);
    }

    private SplittableRandom random(long number, int purpose) {
        return new SplittableRandom(seed * 1_000_003 + number * 31 + purpose);
    }

    private boolean isSpoiled(long number) {
        return number > 2 && random(number, 1).nextDouble() < dirtShare;
    }

    private Map<LedgerColumn, String> cells(long number, InventedPlaces places) {
        return InventedContainer.cells(number, random(number, 2), asOf, places);
    }

    private String spoiltLine(long number, InventedPlaces places) {
        var kinds = Spoiling.values();
        var how = kinds[random(number, 3).nextInt(kinds.length)];
        return switch (how) {
            case CUT_OFF -> {
                var line = line(cells(number, places));
                yield line.substring(0, line.indexOf(',', line.indexOf(',') + 1));
            }
            case WRITTEN_TWICE -> {
                long earlier = number - 1;
                while (isSpoiled(earlier)) {
                    earlier--;
                }
                yield line(cells(earlier, places));
            }
            default -> {
                var cells = cells(number, places);
                how.spoil(cells, asOf);
                yield line(cells);
            }
        };
    }

    private static String line(Map<LedgerColumn, String> cells) {
        return Arrays.stream(LedgerColumn.values()).map(column -> quoted(cells.getOrDefault(column, "")))
                .collect(Collectors.joining(","));
    }

    private static String quoted(String cell) {
        return cell.contains(",") || cell.contains("\"") ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
