/** Work that outlasts its request: queued in a table, done by whichever service claims it, taken up again after a kill. */
@NullMarked
@NamedInterface("jobs")
package org.collarbook.platform.jobs;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
