package org.collarbook.schedule;

import org.collarbook.platform.CalendarFile;

/** What a file of an export is. */
enum ExportFormat {
    CSV("", ".csv", "text/csv"),
    PLAIN_CSV("-plain", ".csv", "text/csv"),
    XLSX("", ".xlsx", ScheduleWorkbook.TYPE),
    ICS("", ".ics", CalendarFile.TYPE),
    JSON_LINES("", ".jsonl", "application/jsonl");

    private final String mark;
    private final String ending;
    final String mediaType;

    ExportFormat(String mark, String ending, String mediaType) {
        this.mark = mark;
        this.ending = ending;
        this.mediaType = mediaType;
    }

    /** Such as {@code schedule-2027-plain.csv}. */
    String name(String of) {
        return of + mark + ending;
    }

    /** Lines that stand by themselves, so that a year, or what has changed, may be told apart. */
    boolean isLines() {
        return switch (this) {
            case CSV, PLAIN_CSV, JSON_LINES -> true;
            case XLSX, ICS -> false;
        };
    }

    /** What tells the changes since an earlier export. */
    boolean tellsChanges() {
        return switch (this) {
            case CSV, PLAIN_CSV -> true;
            case XLSX, ICS, JSON_LINES -> false;
        };
    }
}
