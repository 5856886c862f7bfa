/** Lives of containers over HTTP, step by step. */
@NullMarked
package org.collarbook.journeys;

import org.jspecify.annotations.NullMarked;
