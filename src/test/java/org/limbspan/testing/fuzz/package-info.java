/** Inputs made up from good ones, and the parsers that have to bear them. */
@NullMarked
package org.limbspan.testing.fuzz;

import org.jspecify.annotations.NullMarked;
