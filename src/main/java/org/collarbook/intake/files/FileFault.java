package org.collarbook.intake.files;

import java.util.List;
import java.util.Map;

import org.collarbook.platform.FieldError;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.springframework.http.HttpStatus;

/** What is wrong with a whole file, so that nothing of it is taken. */
public final class FileFault {

    private static final String PART = "/ledger";

    private FileFault() {}

    /** A fault that shows on a line. */
    public static ProblemException at(long line, String code, String detail, String accepted) {
        return problem(code, detail, "line " + line, accepted).with("line", line).asException();
    }

    public static ProblemException rowTooLong(long line, int longest) {
        return at(line, "ROW_TOO_LONG", "The row that starts on line " + line + " is longer than " + longest
                + " characters; a quote that is not closed does that too.",
                "rows of at most " + longest + " characters");
    }

    public static ProblemException wrongEncoding(long line, String how) {
        return at(line, "WRONG_ENCODING", "Line " + line + " of the ledger is " + how + ".", "text in UTF-8, with or"
                + " without a byte order mark; a spreadsheet saves it as \"CSV UTF-8\"");
    }

    static ProblemException of(String code, String detail, String found, String accepted) {
        return problem(code, detail, found, accepted).asException();
    }

    static ProblemException brokenGzip(String how) {
        return of("BROKEN_GZIP", "The gzipped ledger " + how + ".", how, "a whole gzip file (RFC 1952)");
    }

    static ProblemException brokenWorkbook(String how) {
        return of("BROKEN_WORKBOOK", "The workbook cannot be read: " + how + ".", how,
                "a workbook as a spreadsheet saves it (.xlsx, without a password)");
    }

    static ProblemException tooLarge(long most) {
        return of("TOO_LARGE_UNPACKED", "Unpacked, the ledger is longer than " + most + " bytes"
                + " (collarbook.ledger.most-unpacked).", "more than " + most + " bytes",
                "a ledger of at most " + most + " bytes when unpacked, or in parts");
    }

    static ProblemException packedTooWell(int ratio) {
        return of("TOO_LARGE_UNPACKED", "The file unpacks to more than " + ratio + " times its length, which no"
                + " ledger does.", "a file packed to less than 1/" + ratio, "a ledger, gzipped or as a workbook");
    }

    static Problem problem(String code, String detail, String found, String accepted) {
        return new Problem(HttpStatus.BAD_REQUEST, code, detail + " Nothing was stored.",
                List.of(new FieldError(PART, code, found, accepted)), Map.of());
    }
}
