/** A fill is judged and recorded in one step, so that none is recorded that was not allowed. */
@NullMarked
package org.collarbook.compliance.fills;

import org.jspecify.annotations.NullMarked;
