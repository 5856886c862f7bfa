/** What is screwed into a container or affixed to it, and when a tank was out of service. */
@NullMarked
@NamedInterface("fittings")
package org.collarbook.registry.fittings;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
