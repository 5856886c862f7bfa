/** The plan that spreads the load: at which visit each cylinder is pulled, for a year or more ahead. */
@NullMarked
package org.collarbook.dispatch.plans;

import org.jspecify.annotations.NullMarked;
