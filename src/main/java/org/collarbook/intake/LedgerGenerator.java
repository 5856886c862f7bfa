package org.collarbook.intake;

import java.io.IOException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * Writes a made-up ledger of any length, for the demo, tests and figures: each line is worked out from the seed and its
 * number, so memory does not grow and the same seed writes the same ledger. {@code dirtShare} of the lines are such that
 * a register cannot take them.
 */
record LedgerGenerator(long seed, LocalDate asOf, long rows, double dirtShare) {

    private static final long ROWS_PER_SITE = 84;
    private static final int SITES = 60;
    /** At the start, so that there is something to copy. */
    private static final int CLEAN_ROWS = 20;

    /** How many rows were written, and how many of them must be refused or are ambiguous. */
    record Written(long rows, long refused, long ambiguous) {

        long spoiled() {
            return refused + ambiguous;
        }
    }

    Written writeTo(Appendable out) throws IOException {
        out.append(String.join(",", LedgerColumn.words())).append("\r\n");
        var places = new InventedPlaces(seed, (int) Math.max(SITES, Math.min(rows / ROWS_PER_SITE, 1_000_000)));
        long spoiled = 0;
        long ambiguous = 0;
        for (long number = 0; number < rows; number++) {
            boolean isSpoiled = isSpoiled(number);
            spoiled += isSpoiled ? 1 : 0;
            ambiguous += isSpoiled && spoiling(number).outcome() == Line.Outcome.AMBIGUOUS ? 1 : 0;
            out.append(isSpoiled ? spoiltLine(number, places) : line(cells(number, places))).append("\r\n");
        }
        return new Written(rows, spoiled - ambiguous, ambiguous);
    }

    private SplittableRandom random(long number, int purpose) {
        return new SplittableRandom(seed * 1_000_003 + number * 31 + purpose);
    }

    private boolean isSpoiled(long number) {
        return number > CLEAN_ROWS && random(number, 1).nextDouble() < dirtShare;
    }

    private Map<LedgerColumn, String> cells(long number, InventedPlaces places) {
        return InventedContainer.cells(number, random(number, 2), asOf, places);
    }

    private Spoiling spoiling(long number) {
        var kinds = Spoiling.values();
        return kinds[random(number, 3).nextInt(kinds.length)];
    }

    private String spoiltLine(long number, InventedPlaces places) {
        var how = spoiling(number);
        var earlier = earlier(number, places);
        var cells = how.isOfEarlier() ? new EnumMap<>(earlier) : cells(number, places);
        how.spoil(cells, earlier, asOf);
        var line = line(cells);
        return how == Spoiling.CUT_OFF ? line.substring(0, line.indexOf(',', line.indexOf(',') + 1)) : line;
    }

    /** The nearest row before that is taken, and has a maker and a tag to leave out or to copy. */
    private Map<LedgerColumn, String> earlier(long number, InventedPlaces places) {
        for (long earlier = number - 1; earlier >= 0; earlier--) {
            var cells = isSpoiled(earlier) ? Map.<LedgerColumn, String>of() : cells(earlier, places);
            if (!cells.getOrDefault(LedgerColumn.MAKER, "").isEmpty() && cells.containsKey(LedgerColumn.TAG)) {
                return cells;
            }
        }
        throw new IllegalStateException("seed " + seed + " begins with no container that has a maker and a tag");
    }

    private static String line(Map<LedgerColumn, String> cells) {
        return Arrays.stream(LedgerColumn.values()).map(column -> quoted(cells.getOrDefault(column, "")))
                .collect(Collectors.joining(","));
    }

    private static String quoted(String cell) {
        return cell.contains(",") || cell.contains("\"") ? '"' + cell.replace("\"", "\"\"") + '"' : cell;
    }
}
