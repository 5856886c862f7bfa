/** The HTTP face of this module. */
@NullMarked
package org.collarbook.custody.web;

import org.jspecify.annotations.NullMarked;
