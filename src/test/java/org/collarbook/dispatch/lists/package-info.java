@NullMarked
package org.collarbook.dispatch.lists;

import org.jspecify.annotations.NullMarked;
