/** The lists that somebody works from on a visit, as JSON, on paper and in a calendar. */
@NullMarked
package org.collarbook.dispatch.lists;

import org.jspecify.annotations.NullMarked;
