package org.collarbook.compliance.rules;

import java.util.List;

import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Retention;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.tags.Tag;

@RestController
@Tag(name = "Compliance")
class RetentionController {

    private static final String NOTE = "These are the least times that records are kept. The register deletes nothing.";

    private final Retention retention;

    RetentionController(Retention retention) {
        this.retention = retention;
    }

    record RetentionAnswer(String note, List<KeptRecord> records) {}

    /** {@code keep} is absent where no number of years is named, {@code citation} where no regulation was found. */
    record KeptRecord(Retention.RecordKind record, @Nullable String keep, String until, @Nullable Citation citation) {

        static KeptRecord from(Retention.Kept kept) {
            return new KeptRecord(kept.record(), kept.period() == null ? null : kept.period().toString(),
                    kept.until(), kept.citation());
        }
    }

    @GetMapping(path = "/api/retention", produces = "application/json")
    @Operation(summary = "How long each kind of record is kept at least, and where that stands")
    RetentionAnswer retention() {
        return new RetentionAnswer(NOTE, retention.records().stream().map(KeptRecord::from).toList());
    }
}
