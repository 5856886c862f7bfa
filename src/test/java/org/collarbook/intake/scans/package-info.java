@NullMarked
package org.collarbook.intake.scans;

import org.jspecify.annotations.NullMarked;
