/** Reads the rules from their YAML files, checks them and compiles them into a rule book. */
@NullMarked
@NamedInterface("rulebook")
package org.collarbook.regulation.rulebook;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
