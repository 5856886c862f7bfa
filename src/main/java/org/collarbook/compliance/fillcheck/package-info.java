/** The question a filler asks before every fill. */
@NullMarked
@NamedInterface("fillcheck")
package org.collarbook.compliance.fillcheck;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
