/** What requalification will be asked of the fleet for years ahead, by month, when it is done by one method or another. */
@NullMarked
package org.collarbook.schedule.forecast;

import org.jspecify.annotations.NullMarked;
