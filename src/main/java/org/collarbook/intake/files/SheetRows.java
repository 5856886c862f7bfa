package org.collarbook.intake.files;

import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

import javax.xml.stream.XMLStreamConstants;

import org.jspecify.annotations.Nullable;

/** The rows of a sheet one by one, hidden ones and hidden columns too: what is there is read. */
final class SheetRows implements Closeable {

    private static final int MOST_ROWS = 1_048_576;
    private static final int MOST_COLUMNS = 16_384;
    private static final int LETTERS = 26;
    private static final Pattern AREA = Pattern.compile("([A-Z]{1,3})(\\d{1,7})(?::([A-Z]{1,3})(\\d{1,7}))?");

    private final PartReader tags;
    private final CellValue values;
    private final List<Area> merged = new ArrayList<>();
    private int number;

    /** A row with something in it: its number on the sheet, and its cells without the blank ones behind the last. */
    record Row(int number, List<String> cells) {}

    /** Cells that were merged into one, first and last row and column, columns counted from 0. */
    record Area(int top, int left, int bottom, int right) {}

    SheetRows(Workbook workbook, String part) throws IOException {
        tags = workbook.open(part);
        values = new CellValue(tags, workbook);
    }

    /** The next row that is not blank; null after the last. */
    @Nullable
    Row next() throws IOException {
        while (tags.toTag()) {
            if (tags.isAt("row")) {
                number = placed(tags.get("r"), number, MOST_ROWS, "row");
                var cells = cells();
                if (!cells.isEmpty()) {
                    return new Row(number, cells);
                }
            } else if (tags.isAt("mergeCell")) {
                merged.add(area(String.valueOf(tags.get("ref"))));
            }
        }
        return null;
    }

    /** Known after the last row. */
    List<Area> merged() {
        return merged;
    }

    private List<String> cells() throws IOException {
        var cells = new ArrayList<String>();
        int column = -1;
        for (int event = tags.next(); !isEndOfRow(event); event = tags.next()) {
            if (event == XMLStreamConstants.START_ELEMENT && tags.isAt("c")) {
                column = column(tags.get("r"), column);
                var text = values.read();
                if (!text.isBlank()) {
                    while (cells.size() < column) {
                        cells.add("");
                    }
                    cells.add(text);
                }
            }
        }
        return cells;
    }

    private boolean isEndOfRow(int event) {
        if (event == XMLStreamConstants.END_DOCUMENT) {
            throw FileFault.brokenWorkbook("row " + number + " does not end");
        }
        return event == XMLStreamConstants.END_ELEMENT && tags.isAt("row");
    }

    private static int column(@Nullable String reference, int before) {
        if (reference == null) {
            return placed(null, before + 1, MOST_COLUMNS, "column") - 1;
        }
        var place = AREA.matcher(reference);
        if (!place.matches()) {
            throw FileFault.brokenWorkbook("a cell stands at " + reference);
        }
        return placed(String.valueOf(column(place.group(1)) + 1), before + 1, MOST_COLUMNS, "column") - 1;
    }

    private static int column(String letters) {
        int column = 0;
        for (char letter : letters.toCharArray()) {
            column = column * LETTERS + letter - 'A' + 1;
        }
        return column - 1;
    }

    /** Counted from 1, each behind the one before; without a number it is the next. */
    private static int placed(@Nullable String number, int before, int most, String what) {
        try {
            int place = number == null ? before + 1 : Integer.parseInt(number);
            if (place > before && place <= most) {
                return place;
            }
        } catch (NumberFormatException wrong) {
            // refused below
        }
        throw FileFault.brokenWorkbook(what + " " + number + " follows " + what + " " + before);
    }

    private static Area area(String reference) {
        var area = AREA.matcher(reference);
        if (!area.matches() || area.group(3) == null) {
            throw FileFault.brokenWorkbook("cells are merged at " + reference);
        }
        return new Area(Integer.parseInt(area.group(2)), column(area.group(1)), Integer.parseInt(area.group(4)),
                column(area.group(3)));
    }

    @Override
    public void close() throws IOException {
        tags.close();
    }
}
