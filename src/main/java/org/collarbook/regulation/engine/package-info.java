/** Applies the compiled rules to facts; pure, and quick enough to run millions of times a second. */
@NullMarked
package org.collarbook.regulation.engine;

import org.jspecify.annotations.NullMarked;
