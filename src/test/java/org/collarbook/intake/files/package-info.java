@NullMarked
package org.collarbook.intake.files;

import org.jspecify.annotations.NullMarked;
