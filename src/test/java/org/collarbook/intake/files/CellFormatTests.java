package org.collarbook.intake.files;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Locale;

import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.DateUtil;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a person sees in a cell, beside what Apache POI shows of it where no digit is hidden. */
class CellFormatTests {

    private static String shown(String code, String number) {
        return CellFormat.of(code).shown(new BigDecimal(number), false);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            00000000          | 123456
            00000000          | 123456789
            0                 | 17
            0.0               | 17
            0.00              | 47.6
            0.00              | -47.6
            #0.0#             | 47.25
            `0.0" lb"`        | 47.6
            `"SN-"0000`       | 42
            `0.0\\ "lb"`      | 17
            `0" gal"`         | 499
            General           | 47.6
            #                 | 123456789012
            0;[Red]-0         | 12
            """)
    void numbersAreShownAsPoiShowsThem(String code, String number) {
        assertEquals(new DataFormatter(Locale.US).formatRawCellContents(Double.parseDouble(number), 0, code),
                shown(code, number), code);
    }

    @Test
    void digitsThatAFormatHidesStay() {
        assertEquals("47.649", shown("0.0", "47.649"));
        assertEquals("1234.5", shown("#,##0", "1234.5"));
        assertEquals("0.8", shown("0%", "0.8"));
        assertEquals("123456789012", shown("0.00E+00", "123456789012"));
        assertEquals("123456789012", shown("@", "123456789012"));
        assertEquals("0.5", shown("# ?/?", "0.5"));
    }

    /** Apache POI's count of days is the other one; ECMA-376 part 1, 18.17.4.1 has the two systems. */
    @Test
    void daysAreThoseOfBothDateSystems() {
        for (var day : new String[]{"1900-01-01", "1900-02-28", "1900-03-01", "1904-02-29", "1999-12-31", "2004-05-17",
                "2026-11-25", "9999-12-31"}) {
            var date = LocalDate.parse(day);
            assertEquals(day, shown("m/d/yyyy", String.valueOf((long) DateUtil.getExcelDate(date.atStartOfDay()))));
            if (date.getYear() >= 1904) {
                long serial = (long) DateUtil.getExcelDate(date.atStartOfDay(), true);
                assertEquals(day, CellFormat.of("yyyy-mm-dd").shown(BigDecimal.valueOf(serial), true));
            }
        }
        assertEquals("1900-02-29", shown("d/m/yy", "60"));
        assertEquals("#####", shown("d/m/yy", "0"));
        assertEquals("#####", shown("d/m/yy", "-1"));
        assertEquals("#####", shown("d/m/yy", "2958466"));
        assertEquals("#####", shown("d/m/yy", "99999999999"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', quoteCharacter = '`', textBlock = """
            yyyy\\-mm\\-dd;@             | 46083    | 2026-03-02
            [$-409]d\\-mmm\\-yy          | 46083.75 | 2026-03-02
            m/d/yy h:mm                  | 46083.75 | 2026-03-02 18:00
            m/d/yy h:mm                  | 46083    | 2026-03-02
            mmm-yy                       | 46083    | Mar-2026
            [$-409]mmmm\\ yyyy           | 46083    | Mar-2026
            d-mmm                        | 46083    | 2-Mar
            yyyy"-"mm                    | 46083    | Mar-2026
            yyyy                         | 43100    | 2017
            [$-409]yy;@                  | 43100    | 2017
            yyyy h:mm                    | 43100    | 2017
            yyyy dd                      | 43100    | 2017 31
            yyyy-mm h:mm                 | 43100    | Dec-2017
            yyyy\\-mmm                   | 43100    | Dec-2017
            h:mm AM/PM                   | 0.75     | 18:00
            mm:ss                        | 0.5      | 12:00
            [h]:mm                       | 1.5      | 1.5
            `"made "0`                   | 7        | made 7
            """)
    void aDateIsADayAMonthOrNeither(String code, String number, String expected) {
        assertEquals(expected, shown(code, number));
    }
}
