/** The question a filler asks before every fill. */
@NullMarked
package org.collarbook.compliance.fillcheck;

import org.jspecify.annotations.NullMarked;
