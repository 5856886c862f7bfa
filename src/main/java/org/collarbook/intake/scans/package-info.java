/** What a depot that worked offline sends later, line by line; a line sent again records nothing again. */
@NullMarked
package org.collarbook.intake.scans;

import org.jspecify.annotations.NullMarked;
