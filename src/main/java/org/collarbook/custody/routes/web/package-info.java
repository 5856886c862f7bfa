/** Routes, their days and what a vehicle carries, over HTTP. */
@NullMarked
package org.collarbook.custody.routes.web;

import org.jspecify.annotations.NullMarked;
