/** The pull lists: of a route, of the routes of a depot, of sites and customers, and of what stands nobody knows where. */
@NullMarked
package org.collarbook.dispatch.lists;

import org.jspecify.annotations.NullMarked;
