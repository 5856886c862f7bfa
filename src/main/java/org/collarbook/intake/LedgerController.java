package org.collarbook.intake;

import java.io.IOException;
import java.nio.charset.StandardCharsets;

import org.collarbook.platform.LongAnswers;
import org.springframework.http.HttpHeaders;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

@RestController
@RequestMapping("/api/ledger")
@Tag(name = "Imports")
class LedgerController {

    private final LedgerRows rows;

    private final LongAnswers longAnswers;

    LedgerController(LedgerRows rows, LongAnswers longAnswers) {
        this.longAnswers = longAnswers;
        this.rows = rows;
    }

    @GetMapping(produces = "text/csv")
    @Operation(summary = "The whole register as a ledger, in the columns of the template (also by ?format=csv)", description = """
            One row a container, sorted by specification, maker, serial and month (by code points), in one snapshot. Loaded \
            into an empty register and written again it is the same, byte for byte; loaded into the same register every \
            row is `UNCHANGED`. It is for machines: text is as it is, without an apostrophe before what a spreadsheet \
            would run. A stamp that would be read otherwise today is written in its plain form.

            A row does not tell, of a container: pressures, volumes and findings of tests (`/requalifications`), repairs \
            (`/repairs`), holds that were lifted and the recall that one is of (`/holds`), where it stood before \
            (`/movements`, `/sightings`), the weights of fills and those before the last (`/fills`), moves by road \
            (`/transport-records`), former tags and marks and what was merged into it (`/identity`), and what was \
            corrected or withdrawn (`/history`). Sites where nothing stands, routes, products and requalifiers are not \
            in it. Of a container that places in different jurisdictions claim no place is told, so that nobody asks \
            the wrong rules.""")
    void csv(HttpServletRequest request, HttpServletResponse response) throws IOException {
        longAnswers.send(request, () -> send(response));
    }

    private void send(HttpServletResponse response) throws IOException {
        response.setContentType("text/csv");
        response.setCharacterEncoding(StandardCharsets.UTF_8);
        response.setHeader(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"ledger.csv\"");
        rows.write(response.getOutputStream());
    }
}
