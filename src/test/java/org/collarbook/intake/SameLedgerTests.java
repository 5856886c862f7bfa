package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.collarbook.intake.files.LedgerFiles;
import org.collarbook.testing.TestClock;
import org.dhatim.fastexcel.Workbook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.util.unit.DataSize;

/** One invented ledger in every form says the same, spoilt rows and all; the seed is in the name of the test. */
class SameLedgerTests {

    private static final int ROWS = 1500;

    private static List<String> entries(byte[] file) throws IOException {
        var entries = new ArrayList<String>();
        var reader = new EntryReader(TestClock.TODAY, null);
        try (var handedIn = new LedgerFiles(DataSize.ofMegabytes(64)).open(new ByteArrayInputStream(file), null);
                var ledger = new LedgerReader(handedIn.text(), null)) {
            for (var row = ledger.next(); row != null; row = ledger.next()) {
                var line = new Line(row, reader);
                entries.add(line.number() + " " + line.entry() + " " + line.problems().list());
            }
        }
        return entries;
    }

    private static List<List<String>> invented(long seed) throws IOException {
        var text = new StringWriter();
        new LedgerGenerator(seed, TestClock.TODAY, ROWS, 0.05).writeTo(text);
        try (var parser = CSVParser.parse(new StringReader(text.toString()), CSVFormat.RFC4180)) {
            int width = LedgerColumn.values().length;
            // a sheet has no row that is cut off
            return parser.stream().filter(row -> row.size() == width).map(CSVRecord::toList).toList();
        }
    }

    private static byte[] byPoi(List<List<String>> table, org.apache.poi.ss.usermodel.Workbook workbook)
            throws IOException {
        try (workbook; var out = new ByteArrayOutputStream()) {
            var sheet = workbook.createSheet();
            for (int i = 0; i < table.size(); i++) {
                WorkbookTests.fill(sheet, i, table.get(i).toArray());
            }
            workbook.write(out);
            return out.toByteArray();
        }
    }

    private static byte[] byFastexcel(List<List<String>> table) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var workbook = new Workbook(out, "test", null)) {
            var sheet = workbook.newWorksheet("a");
            for (int i = 0; i < table.size(); i++) {
                for (int j = 0; j < table.get(i).size(); j++) {
                    sheet.value(i, j, table.get(i).get(j));
                }
            }
        }
        return out.toByteArray();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 20_261_129})
    void everyFormOfALedgerHasTheSameEntries(long seed) throws IOException {
        var table = invented(seed);
        var csv = Ledger.csv(",", table).getBytes(StandardCharsets.UTF_8);
        var expected = entries(csv);
        assertEquals(table.size() - 1, expected.size());
        Map<String, byte[]> forms = new LinkedHashMap<>();
        forms.put("semicolons", Ledger.csv(";", table).getBytes(StandardCharsets.UTF_8));
        forms.put("tabs", Ledger.csv("\t", table).getBytes(StandardCharsets.UTF_8));
        forms.put("byte order mark", ("\uFEFF" + Ledger.csv(",", table)).getBytes(StandardCharsets.UTF_8));
        forms.put("gzipped", LedgerFilesTests.gzipped(csv));
        forms.put("shared strings", byPoi(table, new XSSFWorkbook()));
        forms.put("inline strings", byPoi(table, new SXSSFWorkbook()));
        forms.put("fastexcel", byFastexcel(table));
        forms.put("workbook gzipped", LedgerFilesTests.gzipped(byFastexcel(table)));
        for (var form : forms.entrySet()) {
            assertEquals(expected, entries(form.getValue()), form.getKey() + ", seed " + seed);
        }
    }
}
