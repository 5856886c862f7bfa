package org.collarbook.intake;

import java.io.IOException;
import java.util.Arrays;
import java.util.List;

import org.apache.commons.csv.CSVFormat;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@RequestMapping("/api/imports/template")
@Tag(name = "Imports")
class TemplateController {

    private static final String WORKBOOK = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    /** {@code words} are the only ones that may stand in it; null where any text may. */
    record Column(String name, boolean required, String meaning, List<String> examples,
            @Nullable List<String> words) {

        static Column from(LedgerColumn column) {
            return new Column(column.word(), column.required(), column.meaning(), column.examples(),
                    ColumnSorts.WORDS.get(column));
        }
    }

    /** Every column of the template, in its order. */
    record Template(List<Column> columns) {}

    @GetMapping(produces = "text/csv", params = "!format")
    @Operation(summary = "The ledger's template as CSV: a header and two example rows (also by ?format=csv)")
    ResponseEntity<String> csv() {
        return ResponseEntity.ok().header(HttpHeaders.CONTENT_TYPE, "text/csv;charset=UTF-8")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"ledger-template.csv\"").body(text());
    }

    @GetMapping(params = "format=csv")
    @Operation(hidden = true)
    ResponseEntity<String> csvByFormat() {
        return csv();
    }

    @GetMapping(produces = WORKBOOK, params = "!format")
    @Operation(summary = "The same as a workbook: the sheet to fill, and one that tells the columns (also by ?format=xlsx)")
    ResponseEntity<byte[]> workbook() throws IOException {
        return ResponseEntity.ok().header(HttpHeaders.CONTENT_TYPE, WORKBOOK)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"ledger-template.xlsx\"")
                .body(TemplateWorkbook.bytes());
    }

    @GetMapping(params = "format=xlsx")
    @Operation(hidden = true)
    ResponseEntity<byte[]> workbookByFormat() throws IOException {
        return workbook();
    }

    @GetMapping(produces = "application/json", params = "!format")
    @Operation(summary = "Every column of the template, what it means and examples (also by ?format=json)")
    Template json() {
        return new Template(Arrays.stream(LedgerColumn.values()).map(Column::from).toList());
    }

    @GetMapping(produces = "application/json", params = "format=json")
    @Operation(hidden = true)
    Template jsonByFormat() {
        return json();
    }

    private static String text() {
        var text = new StringBuilder(line(LedgerColumn.words()));
        for (int example = 0; example < 2; example++) {
            int row = example;
            text.append(line(Arrays.stream(LedgerColumn.values()).map(column -> column.examples().get(row)).toList()));
        }
        return text.toString();
    }

    private static String line(List<String> cells) {
        return CSVFormat.RFC4180.format(cells.toArray()) + "\r\n";
    }
}
