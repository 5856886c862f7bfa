package org.collarbook.intake.files;

import java.math.BigDecimal;
import java.util.regex.Pattern;

/**
 * A number format (ECMA-376 part 1, 18.8.31) as far as it tells what a person sees in the cell: a date, a month, or a
 * number with the zeros and words around it.
 */
sealed interface CellFormat permits CellFormat.Plain, NumberShape, DateShape {

    CellFormat GENERAL = new Plain();

    /** Words in quotes, an escaped letter, padding, and colours, languages and conditions. */
    Pattern ASIDE = Pattern.compile("\"[^\"]*\"|\\\\.|_.|\\*.|\\[[^\\]]*]");
    Pattern ELAPSED = Pattern.compile("\\[[hHmMsS]+]");
    Pattern DATE_LETTERS = Pattern.compile("[yYmMdDhHsS]");

    /** The number as it is. */
    record Plain() implements CellFormat {

        @Override
        public String shown(BigDecimal number, boolean countsFrom1904) {
            return plain(number);
        }
    }

    String shown(BigDecimal number, boolean countsFrom1904);

    static CellFormat of(String code) {
        var letters = ASIDE.matcher(code.replaceAll("\\[[hHmMsS]+]", "h")).replaceAll("");
        var bare = letters.replaceAll("(?i)general|am/pm|a/p", "");
        if (DATE_LETTERS.matcher(bare.split(";", 2)[0]).find()) {
            return ELAPSED.matcher(code).find() ? GENERAL : DateShape.of(bare.split(";", 2)[0]);
        }
        return NumberShape.of(code);
    }

    static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }
}
