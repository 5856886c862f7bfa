/** What was done to containers at the requalifier's bench: completed inspections and tests. */
@NullMarked
@ApplicationModule(allowedDependencies = {"custody", "registry", "regulation", "access", "platform"})
package org.collarbook.inspection;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
