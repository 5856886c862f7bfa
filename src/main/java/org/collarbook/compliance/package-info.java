/** What is due on each container and whether it may be filled: the rule book applied to what the register holds. */
@NullMarked
@ApplicationModule(allowedDependencies = {"holds", "inspection", "custody", "custody :: routes", "registry",
        "registry :: stamps",
        "regulation",
        "regulation :: rulebook",
        "access", "platform"})
package org.collarbook.compliance;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
