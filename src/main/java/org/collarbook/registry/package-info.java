/** Which containers exist and what is stamped on each. */
@NullMarked
@ApplicationModule(allowedDependencies = {"regulation", "access", "platform"})
package org.collarbook.registry;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
