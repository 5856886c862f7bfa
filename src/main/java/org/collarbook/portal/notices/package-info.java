/** What a customer's own endpoint is told of that customer's containers: subscriptions, notices and their delivery. */
@NullMarked
package org.collarbook.portal.notices;

import org.jspecify.annotations.NullMarked;
