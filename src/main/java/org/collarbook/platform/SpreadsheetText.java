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
        return cell.length() > 1 && cell.charAt(0) == '\'' && STARTS.indexOf(cell.charAt(1)) >= 0
                ? cell.substring(1)
                : cell;
    }
}
