@NullMarked
package org.collarbook.schedule.packet;

import org.jspecify.annotations.NullMarked;
