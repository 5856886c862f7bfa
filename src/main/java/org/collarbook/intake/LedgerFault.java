package org.collarbook.intake;

import java.util.List;
import java.util.Map;

import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.springframework.http.HttpStatus;

/** What is wrong with a whole file, so that no row of it is taken: the problem names the line where it shows. */
final class LedgerFault {

    private static final String PART = "/ledger";

    private LedgerFault() {}

    static ProblemException wrongEncoding(long line) {
        return at(line, "WRONG_ENCODING", "Line " + line + " of the ledger is not UTF-8.", "text in UTF-8, with or"
                + " without a byte order mark; a spreadsheet saves it as \"CSV UTF-8\"");
    }

    static ProblemException rowTooLong(long line) {
        return at(line, "ROW_TOO_LONG", "The row that starts on line " + line + " is longer than "
                + LedgerText.LONGEST_ROW + " characters; a quote that is not closed does that too.",
                "rows of at most " + LedgerText.LONGEST_ROW + " characters");
    }

    static ProblemException unclosedQuote(long line) {
        return at(line, "UNCLOSED_QUOTE", "The ledger ends within a quoted cell of the row that starts on line " + line
                + ": it may have been cut off.", "every opened quote closed (RFC 4180)");
    }

    static ProblemException malformedQuotes(long line) {
        return at(line, "MALFORMED_QUOTES", "In the row that starts on line " + line + ", something stands between a"
                + " closing quote and the next comma.", "quotes within a quoted cell doubled (RFC 4180)");
    }

    static ProblemException empty() {
        return at(1, "EMPTY_LEDGER", "The ledger is empty.", "a header line and at least one row");
    }

    static ProblemException noRows() {
        return at(2, "NO_ROWS", "The ledger has a header and no row.", "a header line and at least one row");
    }

    static ProblemException header(List<FieldError> errors) {
        return new Problem(HttpStatus.BAD_REQUEST, "LEDGER_HEADER", "The ledger's header has " + errors.size()
                + (errors.size() == 1 ? " column" : " columns") + " that cannot be accepted; nothing was stored."
                + " GET /api/imports/template gives the template.", errors, Map.of())
                .with("line", 1).with("columns", LedgerColumn.words()).asException();
    }

    private static ProblemException at(long line, String code, String detail, String accepted) {
        return new Problem(HttpStatus.BAD_REQUEST, code, detail + " Nothing was stored.",
                List.of(new FieldError(PART, code, "line " + line, accepted)), Map.of())
                .with("line", line).asException();
    }
}
