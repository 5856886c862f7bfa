package org.collarbook.schedule;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.platform.CalendarFile;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

import tools.jackson.databind.json.JsonMapper;

/** Which files an export has, and what is in each. */
@Component
class ExportContent {

    private static final String NAME = "schedule";

    private final ScheduleRows rows;
    private final ScheduleWorkbook workbook;
    private final ScheduleCalendar calendar;
    private final UndeterminedRows undetermined;
    private final ExportChanges changes;
    private final JsonMapper json;

    ExportContent(ScheduleRows rows, ScheduleWorkbook workbook, ScheduleCalendar calendar,
            UndeterminedRows undetermined, ExportChanges changes, JsonMapper json) {
        this.rows = rows;
        this.workbook = workbook;
        this.calendar = calendar;
        this.undetermined = undetermined;
        this.changes = changes;
        this.json = json;
    }

    /** A file to be written. */
    record Planned(String name, String mediaType, ExportFiles.Writer writer) {

        static Planned of(ExportFormat format, String name, ExportFiles.Writer writer) {
            return new Planned(format.name(name), format.mediaType, writer);
        }
    }

    List<Planned> schedule(Source source, ScheduleFilter filter, @Nullable Replay replay, ExportAsked asked) {
        var files = new ArrayList<Planned>();
        for (var format : asked.formats()) {
            if (asked.fileForEachYear() && format.isLines()) {
                rows.years(source, filter).forEach(year -> files.add(Planned.of(format, NAME + "-" + year,
                        writer(format, source, filter.inYear(year), replay, asked))));
            } else {
                files.add(Planned.of(format, NAME, writer(format, source, filter, replay, asked)));
            }
        }
        return files;
    }

    List<Planned> changes(ExportAsked asked) {
        return asked.formats().stream().map(format -> Planned.of(format, NAME + "-changes",
                out -> changes.write(format == ExportFormat.PLAIN_CSV, out))).toList();
    }

    /** What is in none of the other files; for machines where all of those are. */
    Planned undetermined(Source source, ScheduleFilter filter, ExportAsked asked) {
        boolean plain = asked.formats().stream().allMatch(
                format -> format == ExportFormat.PLAIN_CSV || format == ExportFormat.JSON_LINES);
        return Planned.of(ExportFormat.CSV, "undetermined",
                out -> undetermined.write(source, filter.withoutMonths(), plain, out));
    }

    private ExportFiles.Writer writer(ExportFormat format, Source source, ScheduleFilter filter,
            @Nullable Replay replay, ExportAsked asked) {
        return switch (format) {
            case CSV -> out -> rows.write(source, filter, false, out);
            case PLAIN_CSV -> out -> rows.write(source, filter, true, out);
            case XLSX -> out -> workbook.write(source, filter, replay,
                    asked.fileForEachYear() ? ScheduleWorkbook.Sheets.YEAR : null, out);
            case ICS -> out -> calendar(source, filter, out);
            case JSON_LINES -> out -> lines(source, filter, out);
        };
    }

    private long calendar(Source source, ScheduleFilter filter, OutputStream out) throws IOException {
        var events = calendar.events(source, filter);
        CalendarFile.write("Schedule", events, out);
        return events.size();
    }

    private long lines(Source source, ScheduleFilter filter, OutputStream out) throws IOException {
        var buffered = new BufferedOutputStream(out);
        var count = new long[1];
        rows.each(source, filter, row -> {
            try {
                buffered.write(json.writeValueAsBytes(ScheduleController.Line.from(row)));
                buffered.write('\n');
                count[0]++;
            } catch (IOException impossible) {
                throw new UncheckedIOException(impossible);
            }
        });
        buffered.flush();
        return count[0];
    }
}
