/** The forms in which a ledger's file is handed in, and how each becomes plain text. */
@NullMarked
package org.collarbook.intake.files;

import org.jspecify.annotations.NullMarked;
