/** The register of refillable LP-gas cylinders and bulk tanks. */
@NullMarked
package org.collarbook;

import org.jspecify.annotations.NullMarked;
