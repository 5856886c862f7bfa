/** The stateless call: facts in a request, the assessment in the answer, nothing kept. */
@NullMarked
package org.collarbook.compliance.assessment;

import org.jspecify.annotations.NullMarked;
