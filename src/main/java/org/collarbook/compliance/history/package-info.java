/** The life of a container as it was recorded, and the proof that nothing of it was altered since. */
@NullMarked
package org.collarbook.compliance.history;

import org.jspecify.annotations.NullMarked;
