/** The traps that two catalogues of requalification rules warn of, a class each; every one is tried on the real rules. */
@NullMarked
package org.collarbook.regulation.traps;

import org.jspecify.annotations.NullMarked;
