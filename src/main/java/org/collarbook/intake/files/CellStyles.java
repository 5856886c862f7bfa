package org.collarbook.intake.files;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** How the cells of a workbook show their numbers, by the number of their style. */
final class CellStyles {

    /** Excel allows 65,490. */
    private static final int MOST = 100_000;

    private final List<CellFormat> formats;

    private CellStyles(List<CellFormat> formats) {
        this.formats = formats;
    }

    static CellStyles read(@Nullable String part, Workbook workbook) throws IOException {
        var codes = new HashMap<String, String>();
        var styles = new ArrayList<String>();
        if (part != null) {
            try (var tags = workbook.open(part)) {
                boolean ofCells = false;
                while (tags.toTag()) {
                    ofCells = tags.isAt("cellXfs") || ofCells && (tags.isAt("xf") || tags.isAt("alignment")
                            || tags.isAt("protection"));
                    if (tags.isAt("numFmt")) {
                        codes.put(String.valueOf(tags.get("numFmtId")), String.valueOf(tags.get("formatCode")));
                    } else if (ofCells && tags.isAt("xf")) {
                        styles.add(tags.get("numFmtId") == null ? "0" : String.valueOf(tags.get("numFmtId")));
                    }
                    if (codes.size() > MOST || styles.size() > MOST) {
                        throw FileFault.brokenWorkbook("it has too many styles");
                    }
                }
            }
        }
        return new CellStyles(formats(styles, codes));
    }

    private static List<CellFormat> formats(List<String> styles, Map<String, String> codes) {
        var known = new HashMap<String, CellFormat>();
        return styles.stream().map(id -> known.computeIfAbsent(id, any -> CellFormat.of(code(id, codes)))).toList();
    }

    private static String code(String id, Map<String, String> codes) {
        var own = codes.get(id);
        return own == null ? builtIn(id) : own;
    }

    /** ECMA-376 part 1, 18.8.30; those of the East Asian languages by what they show. */
    private static String builtIn(String id) {
        return switch (id) {
            case "1" -> "0";
            case "2" -> "0.00";
            case "3" -> "#,##0";
            case "4" -> "#,##0.00";
            case "9" -> "0%";
            case "10" -> "0.00%";
            case "14", "27", "28", "29", "30", "31", "36", "50", "51", "52", "53", "54", "57", "58" -> "yyyy-mm-dd";
            case "15" -> "d-mmm-yy";
            case "16" -> "d-mmm";
            case "17" -> "mmm-yy";
            case "18", "19", "20", "21", "32", "33", "34", "35", "45", "47", "55", "56" -> "h:mm:ss";
            case "22" -> "yyyy-mm-dd h:mm";
            default -> "General";
        };
    }

    CellFormat of(@Nullable String style) {
        if (style == null) {
            return CellFormat.GENERAL;
        }
        try {
            return formats.get(Integer.parseInt(style));
        } catch (NumberFormatException | IndexOutOfBoundsException missing) {
            throw FileFault.brokenWorkbook("a cell names a style that is not there");
        }
    }
}
