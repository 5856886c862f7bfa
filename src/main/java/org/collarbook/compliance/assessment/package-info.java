/** The stateless call: facts in a request, the assessment in the answer, nothing kept. */
@NullMarked
@NamedInterface("assessment")
package org.collarbook.compliance.assessment;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
