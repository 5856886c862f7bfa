package org.collarbook.intake;

import java.util.List;
import java.util.Map;

import org.collarbook.intake.files.FileFault;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.springframework.http.HttpStatus;

/** What is wrong with a whole file, so that no row of it is taken: the problem names the line where it shows. */
final class LedgerFault {

    private LedgerFault() {}

    static ProblemException unclosedQuote(long line) {
        return FileFault.at(line, "UNCLOSED_QUOTE",
                "The ledger ends within a quoted cell of the row that starts on line " + line
                        + ": it may have been cut off.",
                "every opened quote closed (RFC 4180)");
    }

    static ProblemException malformedQuotes(long line) {
        return FileFault.at(line, "MALFORMED_QUOTES",
                "In the row that starts on line " + line + ", something stands between a"
                        + " closing quote and the next comma.",
                "quotes within a quoted cell doubled (RFC 4180)");
    }

    static ProblemException empty() {
        return FileFault.at(1, "EMPTY_LEDGER", "The ledger is empty.", "a header line and at least one row");
    }

    static ProblemException noRows() {
        return FileFault.at(2, "NO_ROWS", "The ledger has a header and no row.", "a header line and at least one row");
    }

    static ProblemException header(long line, List<FieldError> errors, List<String> known) {
        return new Problem(HttpStatus.BAD_REQUEST, "LEDGER_HEADER", "The ledger's header has " + errors.size()
                + (errors.size() == 1 ? " column" : " columns") + " that cannot be accepted; nothing was stored."
                + " GET /api/imports/template gives the template; headings of your own are told by a column map"
                + " (PUT /api/column-maps/{name}).", errors, Map.of())
                .with("line", line).with("columns", known).asException();
    }
}
