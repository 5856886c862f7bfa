/** What is found and measured at the bench, and the result that follows from it: no database, no clock. */
@NullMarked
package org.collarbook.inspection.bench;

import org.jspecify.annotations.NullMarked;
