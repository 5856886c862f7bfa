/** Reads lines of a collar or data plate: what each line is, what it says, and what they make together. */
@NullMarked
@NamedInterface("stamps")
package org.collarbook.registry.stamps;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
