/** The HTTP face of this module. */
@NullMarked
package org.collarbook.registry.web;

import org.jspecify.annotations.NullMarked;
