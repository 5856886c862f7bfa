/** The dated, cited rules and the decision they give about one container on one date; pure Java. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package org.collarbook.regulation;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
