/** What falls due, month by month, as pages and as a file; and all that an inspector asks for, as one packet. */
@NullMarked
@ApplicationModule(allowedDependencies = {"compliance", "compliance :: assessment", "compliance :: sites", "holds",
        "holds :: web", "inspection", "inspection :: web", "custody", "custody :: web",
        "registry", "registry :: fittings", "registry :: web", "regulation", "access", "platform",
        "platform :: paper", "platform :: jobs"})
package org.collarbook.schedule;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
