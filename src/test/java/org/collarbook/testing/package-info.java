/** What the tests of all modules stand on: the whole service on a real PostgreSQL, a clock to set, a client. */
@NullMarked
package org.collarbook.testing;

import org.jspecify.annotations.NullMarked;
