package org.collarbook.intake;

import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;

import org.collarbook.platform.Inputs;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;

/** Of what a ledger is handed in with nothing is passed over: a part that nobody reads may have been meant. */
final class LedgerParts {

    private static final Set<String> FILES = Set.of("ledger", "declaration");
    private static final Set<String> TEXTS = Set.of("map", "sheet");
    private static final String KNOWN = "one of ledger, declaration, map, sheet, each once";

    private LedgerParts() {}

    static void require(HttpServletRequest request) throws IOException, ServletException {
        var wrong = new Inputs();
        var seen = new HashSet<String>();
        for (var part : request.getParts()) {
            var name = part.getName();
            boolean isFirst = seen.add(name);
            if (!FILES.contains(name) && !TEXTS.contains(name)) {
                wrong.refuse("/" + name, "UNKNOWN_PART", Shown.of(name), KNOWN);
            } else if (!isFirst) {
                wrong.refuse("/" + name, "TOLD_TWICE", name, KNOWN);
            }
        }
        for (var name : new TreeSet<>(request.getParameterMap().keySet())) {
            if (!TEXTS.contains(name) && !seen.contains(name)) {
                wrong.refuse(name, "UNKNOWN_PARAMETER", Shown.of(name), KNOWN);
            } else if (TEXTS.contains(name) && request.getParameterValues(name).length > 1 && seen.contains(name)) {
                wrong.refuse(name, "TOLD_TWICE", name, KNOWN);
            }
        }
        wrong.done();
    }
}
