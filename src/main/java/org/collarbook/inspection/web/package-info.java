/** The HTTP face of this module. */
@NullMarked
package org.collarbook.inspection.web;

import org.jspecify.annotations.NullMarked;
