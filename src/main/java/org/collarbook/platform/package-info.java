/** What every module stands on: problem answers, page cursors, idempotency, the database server. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package org.collarbook.platform;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
