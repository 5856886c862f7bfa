/**
 * A fill is judged and recorded in one step, so that none is accepted that was not allowed; one that is told after it has
 * happened is recorded as it was, flagged and held where it was not allowed.
 */
@NullMarked
@NamedInterface("fills")
package org.collarbook.compliance.fills;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
