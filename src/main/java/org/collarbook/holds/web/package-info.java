/** The HTTP face of this module. */
@NullMarked
package org.collarbook.holds.web;

import org.jspecify.annotations.NullMarked;
