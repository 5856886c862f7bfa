/** The sums and the judgement of a record, without a database. */
@NullMarked
package org.collarbook.inspection.bench;

import org.jspecify.annotations.NullMarked;
