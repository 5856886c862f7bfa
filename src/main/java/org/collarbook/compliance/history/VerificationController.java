package org.collarbook.compliance.history;

import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Cursor;
import org.collarbook.platform.JournalAudit;
import org.collarbook.platform.PageSize;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "History")
class VerificationController {

    private final JournalAudit audit;

    VerificationController(JournalAudit audit) {
        this.audit = audit;
    }

    /** {@code whole} when nothing is broken in what was looked at; {@code next} goes on from there. */
    record Verification(boolean whole, int containers, long entries, List<JournalAudit.Broken> broken,
            @Nullable String next) {

        static Verification from(JournalAudit.Found found) {
            var last = found.next();
            return new Verification(found.broken().isEmpty(), found.containers(), found.entries(), found.broken(),
                    last == null ? null : Cursor.after(last).toString());
        }
    }

    @GetMapping(path = "/api/audit/verification", produces = "application/json")
    @Operation(summary = "Has anything that was recorded been altered since?", description = """
            Walks the chains of one container, or of all by pages: every hash must follow from the one before it, and \
            every entry must say what its fact says today. What does not hold is named.""")
    ResponseEntity<Verification> verify(@RequestParam(required = false) @Nullable UUID container,
            @RequestParam(required = false) @Nullable String cursor,
            @RequestParam(required = false) @Nullable Integer size) {
        var found = container == null
                ? audit.after(Cursor.parseId(cursor), PageSize.of(size).rows())
                : audit.of(container);
        return ResponseEntity.ok().cacheControl(CacheControl.noStore()).body(Verification.from(found));
    }
}
