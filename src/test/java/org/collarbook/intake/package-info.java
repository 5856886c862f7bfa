@NullMarked
package org.collarbook.intake;

import org.jspecify.annotations.NullMarked;
