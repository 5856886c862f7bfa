/** Routes: which sites a vehicle calls at, from which depot, and on which days. Visits are computed, never typed. */
@NullMarked
@NamedInterface("routes")
package org.collarbook.custody.routes;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
