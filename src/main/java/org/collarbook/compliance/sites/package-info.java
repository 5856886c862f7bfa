/** What a site is asked to have beside its tanks, and whether it has it. */
@NullMarked
@NamedInterface("sites")
package org.collarbook.compliance.sites;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.NamedInterface;
