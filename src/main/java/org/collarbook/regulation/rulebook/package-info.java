/**
 * Reads the rules from their YAML files, checks them and compiles them into a rule book.
 *
 * <p>
 * A file has a {@code subject}, a {@code jurisdiction}, the {@code sources} that were read and {@code rules}. A rule
 * {@code sets} a requirement's clock, {@code gates} permissions by a topic, or {@code limits} a fill; it {@code applies}
 * to kinds, families and authorities under conditions named as in a request; of the rules that set one requirement the
 * higher {@code precedence} is asked first. Its {@code values} are keyed by the day they start, each with its citation
 * inside: section, source, the day in force and the basis. {@code unread} names a later amendment that was not read.
 * Every rule has a matching and a non-matching example, which the tests run. A new file is listed in {@code index.txt}.
 */
@NullMarked
@NamedInterface("rulebook")
package org.collarbook.regulation.rulebook;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
