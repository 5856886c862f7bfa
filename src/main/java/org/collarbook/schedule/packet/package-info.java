/** The audit packet: all that is on record of a container, or of what stands at a site, in one consistent snapshot. */
@NullMarked
package org.collarbook.schedule.packet;

import org.jspecify.annotations.NullMarked;
