/** Where containers stand: customers, sites, movements and fills; and the fire extinguishers beside them. */
@NullMarked
@ApplicationModule(allowedDependencies = {"registry", "regulation", "access", "platform"})
package org.collarbook.custody;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
