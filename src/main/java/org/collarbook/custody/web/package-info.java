/** The HTTP face of this module. */
@NullMarked
@NamedInterface("web")
package org.collarbook.custody.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
