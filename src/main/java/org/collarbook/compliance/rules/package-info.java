/** The rule book as anybody may read it: its rules with their values and citations, and what it does not cover. */
@NullMarked
package org.collarbook.compliance.rules;

import org.jspecify.annotations.NullMarked;
