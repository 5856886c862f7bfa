package org.collarbook.schedule;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.FieldError;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What an export is to have: {@code filter}, {@code asOf} and {@code knownAt} as of the schedule; {@code formats} of
 * {@link ExportFormat}; {@code files}: {@code YEAR} gives each year a file, in a workbook a sheet, of its own;
 * {@code since}: an earlier export of the same filter, by its id or its {@code snapshotAt}, and then the files tell what
 * is new, changed and gone.
 */
@Schema(name = "NewScheduleExport", requiredProperties = "formats")
record ExportRequest(@Nullable ScheduleQuestion filter, @Nullable String asOf, @Nullable String knownAt,
        @Nullable List<@Nullable String> formats, @Nullable String files, @Nullable String since) {

    private enum Files {
        YEAR
    }

    ExportAsked read(ScheduleQuestions questions, ScheduleExports exports, Instant now) {
        var wrong = new Inputs();
        var read = filter == null ? ScheduleFilter.EVERYTHING : questions.ofBody(filter, wrong);
        var asked = ScheduleQuestion.of(read);
        var ofReplay = new Inputs();
        var replay = new ReplayQuestion(asOf, knownAt).read(now, ofReplay);
        ScheduleQuestions.refuseUnder("/", ofReplay, wrong);
        var chosen = formats(wrong);
        var parts = wrong.word("/files", files, Files.class);
        if (replay != null && chosen.contains(ExportFormat.ICS)) {
            wrong.refuse("/formats", "NOT_OF_ANOTHER_DAY", "ICS",
                    "other formats: whoever opens a calendar takes it for the one of today");
        }
        var base = wrong.areRefused() ? null : since(exports, asked, replay != null, chosen, wrong);
        wrong.done();
        return new ExportAsked(asked, replay == null ? null : replay.asOf(),
                replay == null || knownAt == null || knownAt.isBlank() ? null : replay.knownAt(),
                List.copyOf(chosen), parts == Files.YEAR, base);
    }

    private Set<ExportFormat> formats(Inputs wrong) {
        var chosen = EnumSet.noneOf(ExportFormat.class);
        var given = formats == null ? List.<@Nullable String>of() : formats;
        for (int i = 0; i < given.size(); i++) {
            var format = wrong.word("/formats/" + i, given.get(i), ExportFormat.class);
            if (format != null) {
                chosen.add(format);
            }
        }
        if (chosen.isEmpty() && !wrong.areRefused()) {
            wrong.refuse(
                    List.of(FieldError.missing("/formats", "one or more of " + EnumSet.allOf(ExportFormat.class))));
        }
        return chosen;
    }

    private @Nullable UUID since(ScheduleExports exports, ScheduleQuestion asked, boolean replayed,
            Set<ExportFormat> chosen, Inputs wrong) {
        if (since == null || since.isBlank()) {
            return null;
        }
        if (replayed) {
            wrong.refuse("/since", "NOT_OF_ANOTHER_DAY", since, "an export without asOf and knownAt");
        }
        chosen.stream().filter(format -> !format.tellsChanges()).forEach(format -> wrong.refuse("/formats",
                "NOT_FOR_CHANGES", format.name(), "CSV or PLAIN_CSV, where since is told"));
        if (files != null && !files.isBlank()) {
            wrong.refuse("/files", "NOT_FOR_CHANGES", files, "nothing, where since is told");
        }
        return base(exports, asked, since.strip(), wrong);
    }

    private static @Nullable UUID base(ScheduleExports exports, ScheduleQuestion asked, String told, Inputs wrong) {
        var found = earlier(exports, asked, told);
        if (found == null) {
            wrong.refuse("/since", "UNKNOWN_EXPORT", told,
                    "the id of an export that is DONE, or its snapshotAt, of which the keys of the rows are still kept");
        } else if (!found.asked().filter().equals(asked) || found.isReplayed()) {
            wrong.refuse("/since", "ANOTHER_FILTER", told, "an export of the same filter, without asOf and knownAt");
        }
        return found == null ? null : found.id();
    }

    private static @Nullable ScheduleExport earlier(ScheduleExports exports, ScheduleQuestion asked, String told) {
        try {
            return exports.base(UUID.fromString(told)).orElse(null);
        } catch (IllegalArgumentException notAnId) {
            try {
                return exports.base(WrittenTime.moment(told), asked).orElse(null);
            } catch (DateTimeException notAMoment) {
                return null;
            }
        }
    }
}
