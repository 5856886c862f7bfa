package org.collarbook.intake.files;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Pattern;

import javax.xml.stream.XMLStreamConstants;

import org.jspecify.annotations.Nullable;

/** What a cell holds, as text and as a person sees it, of a formula what was last computed. */
final class CellValue {

    /** Of a number a spreadsheet keeps so many digits; what is longer has lost some. */
    private static final MathContext KEPT = new MathContext(15);
    private static final double LONGEST = 1e15;
    private static final Pattern NUMBER = Pattern.compile("[-+]?\\d{0,40}(\\.\\d{0,40})?([eE][-+]?\\d{1,3})?");
    private static final Pattern ESCAPED = Pattern.compile("_x([0-9a-fA-F]{4})_");
    private static final Pattern LINE_BREAKS = Pattern.compile("[\\r\\n]+");

    private final PartReader tags;
    private final Workbook workbook;

    CellValue(PartReader tags, Workbook workbook) {
        this.tags = tags;
        this.workbook = workbook;
    }

    /** Of the cell that the reader is at, to its end; blank where it holds nothing. A line break becomes a space. */
    String read() throws IOException {
        var type = tags.get("t");
        var style = tags.get("s");
        String value = null;
        boolean computed = false;
        for (int event = tags.next(); !(event == XMLStreamConstants.END_ELEMENT && tags.isAt("c")); event = tags
                .next()) {
            if (event == XMLStreamConstants.END_DOCUMENT) {
                throw FileFault.brokenWorkbook("a cell does not end");
            }
            if (event == XMLStreamConstants.START_ELEMENT) {
                if (tags.isAt("v") || tags.isAt("is")) {
                    value = tags.text();
                } else {
                    computed |= tags.isAt("f");
                }
            }
        }
        if (value == null || value.isEmpty() && !"str".equals(type) && !"inlineStr".equals(type)) {
            return computed ? "#NOT-COMPUTED!" : "";
        }
        return LINE_BREAKS.matcher(shown(type, style, value)).replaceAll(" ");
    }

    private String shown(@Nullable String type, @Nullable String style, String value) throws IOException {
        return switch (type == null ? "n" : type) {
            case "s" -> unescaped(workbook.texts().get(value));
            case "str", "inlineStr" -> unescaped(value);
            case "b" -> value.strip().equals("1") || value.strip().equals("true") ? "yes" : "no";
            // as the spreadsheet shows it: a reader refuses it, in CSV as well
            case "e" -> value.strip();
            case "d" -> value.strip().replaceFirst("T00:00(:00(\\.0*)?)?Z?$", "");
            case "n" -> number(value.strip(), workbook.styles().of(style));
            default -> throw FileFault.brokenWorkbook("a cell is of an unknown type");
        };
    }

    /** ECMA-376 part 1, 22.9.2.19: what XML cannot hold, in four hexadecimal digits. */
    private static String unescaped(String text) {
        return text.contains("_x")
                ? ESCAPED.matcher(text).replaceAll(letter -> java.util.regex.Matcher
                        .quoteReplacement(String.valueOf((char) Integer.parseInt(letter.group(1), 16))))
                : text;
    }

    private String number(String value, CellFormat format) {
        if (!NUMBER.matcher(value).matches() || value.chars().noneMatch(Character::isDigit)) {
            throw FileFault.brokenWorkbook("a number is written as no number is");
        }
        double approximate = Double.parseDouble(value);
        if (Double.isInfinite(approximate)) {
            throw FileFault.brokenWorkbook("a number is larger than a spreadsheet holds");
        }
        if (Math.abs(approximate) >= LONGEST) {
            // digits are lost: as a spreadsheet shows it, which no reader takes for the number
            return String.valueOf(new BigDecimal(approximate).round(KEPT).stripTrailingZeros().unscaledValue())
                    .replaceFirst("^(-?\\d)(\\d+)$", "$1.$2") + "E+"
                    + (int) Math.floor(Math.log10(Math.abs(approximate)));
        }
        return approximate == 0
                ? format.shown(BigDecimal.ZERO, workbook.countsFrom1904())
                : format.shown(new BigDecimal(value).round(KEPT), workbook.countsFrom1904());
    }
}
