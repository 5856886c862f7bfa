package org.collarbook.intake;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.apache.commons.csv.CSVRecord;
import org.collarbook.intake.ImportLines.LedgerLine;
import org.collarbook.intake.ImportReport.LineProblem;
import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.SpreadsheetText;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Rows of a ledger as a ledger again: its header, the rows as they were handed in, and two columns more that say what was
 * wrong. Mended it is loaded as it is, for those columns are passed over, and so is the apostrophe before a cell that a
 * spreadsheet would run. A row with too few cells stays so, that it is not taken for a whole one.
 */
@Component
class LinesToMend {

    private static final List<String> ADDED = List.of("problem_line", "problems");
    private static final PageSize MOST = PageSize.of(PageSize.MOST);
    /** A number below zero is no formula. */
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d+(\\.\\d+)?");

    private final ImportLines lines;
    private final ColumnMaps maps;
    private final JdbcClient jdbc;

    LinesToMend(ImportLines lines, ColumnMaps maps, JdbcClient jdbc) {
        this.lines = lines;
        this.maps = maps;
        this.jdbc = jdbc;
    }

    /** A column that was added here, and is nothing of the ledger. */
    static boolean isAdded(String heading) {
        return ADDED.contains(heading.strip().toLowerCase(Locale.ROOT));
    }

    /** The file is read once, no further than the last of the rows; what is kept is a page of its lines. */
    void write(UUID importId, UUID pass, Collection<Line.Outcome> outcomes, OutputStream out) throws IOException {
        // not closed here: what breaks off must not look like a whole file
        var text = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        try (var reader = new LedgerReader(StoredFile.read(jdbc, importId), maps.keptWith(importId))) {
            text.write(written(reader, reader.header(), ADDED));
            for (var page = lines.page(pass, outcomes, 0, MOST);; page = lines.page(pass, outcomes, after(page),
                    MOST)) {
                for (var line : page.items()) {
                    text.write(written(reader, row(reader, line), List.of(Long.toString(line.line()), words(line))));
                }
                if (page.next() == null) {
                    text.flush();
                    return;
                }
            }
        }
    }

    private static long after(Page<LedgerLine> page) {
        return page.items().getLast().line();
    }

    private static CSVRecord row(LedgerReader reader, LedgerLine line) {
        var row = reader.next();
        while (row != null && row.line() < line.line()) {
            row = reader.next();
        }
        if (row == null || row.line() > line.line()) {
            throw new IllegalStateException("no row starts on line " + line.line());
        }
        return reader.asHandedIn();
    }

    /** A file that came from here has the columns already: they are written anew. */
    private static String written(LedgerReader reader, CSVRecord row, List<String> added) {
        var cells = new ArrayList<String>();
        for (int i = 0; i < row.size(); i++) {
            if (i >= reader.header().size() || !isAdded(reader.header().get(i))) {
                cells.add(row.get(i));
            }
        }
        cells.addAll(added);
        cells.replaceAll(cell -> NUMBER.matcher(cell).matches() ? cell : SpreadsheetText.guarded(cell));
        return reader.format().format(cells.toArray()) + "\r\n";
    }

    private static String words(LedgerLine line) {
        return line.problems().stream().filter(LineProblem::refuses).map(LinesToMend::words)
                .collect(Collectors.joining(" | "));
    }

    private static String words(LineProblem problem) {
        return problem.column() + " " + problem.code() + ": "
                + (problem.found() == null ? "" : "found " + problem.found() + "; ") + "accepted " + problem.accepted();
    }
}
