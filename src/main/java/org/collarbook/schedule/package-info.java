/** What falls due, month by month, as pages and as a file. */
@NullMarked
@ApplicationModule(allowedDependencies = {"compliance", "custody", "registry", "regulation", "access", "platform"})
package org.collarbook.schedule;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
