/** What a named person declares for many registered containers at once, and what becomes of each. */
@NullMarked
package org.collarbook.compliance.declarations;

import org.jspecify.annotations.NullMarked;
