package org.collarbook.intake.files;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.intake.files.Workbook.Sheet;
import org.jspecify.annotations.Nullable;

/**
 * Which sheet is the ledger: the one that was named; else the visible one called "Ledger", as the template has it; else
 * the only visible one with anything on it. Where several have, nobody guesses.
 */
final class SheetChoice {

    private static final String LEDGER = "Ledger";

    private final Workbook workbook;
    private final List<Sheet> sheets;

    SheetChoice(Workbook workbook, List<Sheet> sheets) {
        this.workbook = workbook;
        this.sheets = sheets;
    }

    Sheet of(@Nullable String wanted) throws IOException {
        if (wanted != null) {
            return sheets.stream().filter(sheet -> sheet.name().strip().equalsIgnoreCase(wanted.strip())).findFirst()
                    .orElseThrow(() -> refused("UNKNOWN_SHEET", "The workbook has no sheet of this name.", wanted));
        }
        var filled = new ArrayList<Sheet>();
        for (var sheet : sheets) {
            if (!sheet.hidden() && sheet.name().strip().equalsIgnoreCase(LEDGER)) {
                return sheet;
            }
            if (!sheet.hidden() && hasCells(sheet)) {
                filled.add(sheet);
            }
        }
        if (filled.size() > 1) {
            throw refused("WHICH_SHEET", "Several sheets of the workbook have rows: name one by the part sheet.",
                    names(filled));
        }
        if (filled.isEmpty()) {
            throw FileFault.at(1, "EMPTY_LEDGER", "No visible sheet of the workbook has anything on it.",
                    "a header row and at least one row");
        }
        return filled.getFirst();
    }

    private boolean hasCells(Sheet sheet) throws IOException {
        try (var rows = new SheetRows(workbook, sheet.part())) {
            return rows.next() != null;
        }
    }

    private RuntimeException refused(String code, String detail, String found) {
        return FileFault.problem(code, detail, found, "one of " + names(sheets))
                .with("sheets", sheets.stream().map(Sheet::name).toList()).asException();
    }

    private static String names(List<Sheet> sheets) {
        return String.join(", ", sheets.stream().map(Sheet::name).toList());
    }
}
