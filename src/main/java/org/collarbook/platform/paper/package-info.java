/** What every printed sheet has: its letters, cells and tables, and the edges of its pages. */
@NullMarked
@NamedInterface("paper")
package org.collarbook.platform.paper;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
