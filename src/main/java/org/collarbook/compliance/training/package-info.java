/** What people were trained in and until when that counts. */
@NullMarked
package org.collarbook.compliance.training;

import org.jspecify.annotations.NullMarked;
