/** What a customer's portal may read of that customer's containers and sites, and nothing else. */
@NullMarked
@ApplicationModule(allowedDependencies = {"compliance", "custody", "registry", "regulation", "access", "platform"})
package org.collarbook.portal;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
