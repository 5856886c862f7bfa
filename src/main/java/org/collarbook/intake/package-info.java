/** Ledgers handed in: read row by row, checked, reported and committed; and the demo's invented ledger. */
@NullMarked
@ApplicationModule(allowedDependencies = {"compliance", "holds", "inspection", "custody", "registry", "regulation",
        "access", "platform"})
package org.collarbook.intake;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
