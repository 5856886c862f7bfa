package org.collarbook.intake;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.registry.Declaration;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/** What a ledger is read under: who handed it in, on which day, what was declared with it, and how it is read. */
record Terms(UUID importId, @Nullable Declaration said, @Nullable ZoneId zone, LocalDate asOf, UUID by,
        @Nullable ColumnMap map) {

    @Nullable
    Jurisdiction jurisdiction() {
        return said == null ? null : said.jurisdiction();
    }
}
