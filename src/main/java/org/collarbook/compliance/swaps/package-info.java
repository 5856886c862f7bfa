/** A container is taken away at a stop and another left in its place, judged before it may stay there. */
@NullMarked
@NamedInterface("swaps")
package org.collarbook.compliance.swaps;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
