package org.collarbook.platform;

/**
 * Text for a CSV file that somebody may open in a spreadsheet: a cell that would be run as a formula gets an apostrophe
 * before it (OWASP, CSV injection). Such a cell begins with {@code = + - @}, a tab or a carriage return.
 */
public final class SpreadsheetText {

    private static final String STARTS = "=+-@\t\r";

    private SpreadsheetText() {}

    public static String guarded(String cell) {
        return !cell.isEmpty() && STARTS.indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
    }

    /** The same as an expression over a column; comparing a number costs less than a pattern. */
    public static String guardedInSql(String column) {
        return "case when ascii(" + column + ") in (61, 43, 45, 64, 9, 13) then '''' || " + column + " else " + column
                + " end";
    }

    /** The cell without the apostrophe of {@link #guarded}. */
    public static String unguarded(String cell) {
        return looksGuarded(cell) ? cell.substring(1) : cell;
    }

    /** So that {@link #unguarded} gives the cell again: what looks as if it were guarded gets an apostrophe more. */
    public static String asItIs(String cell) {
        return looksGuarded(cell) ? "'" + cell : cell;
    }

    /** Apostrophes before what would be run. */
    private static boolean looksGuarded(String cell) {
        int at = 0;
        while (at < cell.length() && cell.charAt(at) == '\'') {
            at++;
        }
        return at > 0 && at < cell.length() && STARTS.indexOf(cell.charAt(at)) >= 0;
    }
}
