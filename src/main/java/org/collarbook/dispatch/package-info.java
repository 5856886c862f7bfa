/** Which containers must come back, by stop, with what to load in their place; and the plan that spreads the load. */
@NullMarked
@ApplicationModule(allowedDependencies = {"compliance", "holds", "custody", "custody :: routes", "registry",
        "regulation",
        "access", "platform", "platform :: jobs", "platform :: paper"})
package org.collarbook.dispatch;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
