/** What keeps a container out of service until it is lifted: holds, and the recalls that place them. */
@NullMarked
@ApplicationModule(allowedDependencies = {"inspection", "custody", "registry", "regulation", "access", "platform"})
package org.collarbook.holds;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
