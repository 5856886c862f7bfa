/**
 * What is handed in whole: ledgers, read row by row, checked, reported and committed; the demo's invented one; and the
 * batches of a depot that worked offline.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"compliance", "compliance :: fills", "compliance :: fillcheck",
        "compliance :: swaps", "holds",
        "inspection", "custody", "custody :: routes", "registry", "registry :: fittings", "regulation",
        "access", "platform", "platform :: jobs"})
package org.collarbook.intake;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
