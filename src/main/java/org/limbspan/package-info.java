/** The application class; every capability has a package of its own below. */
@NullMarked
package org.limbspan;

import org.jspecify.annotations.NullMarked;
