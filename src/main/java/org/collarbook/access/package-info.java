/** Who is calling: API keys, roles and the customer a caller is confined to. */
@NullMarked
@ApplicationModule(allowedDependencies = {"platform"})
package org.collarbook.access;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
