/** Moves by road of tanks that otherwise stay, judged and recorded. */
@NullMarked
package org.collarbook.compliance.transport;

import org.jspecify.annotations.NullMarked;
