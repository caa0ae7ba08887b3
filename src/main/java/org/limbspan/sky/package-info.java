/**
 * Pure: where the Moon and the Sun are, seen from a site. Entry point {@link org.limbspan.sky.Sky}.
 * Instants are UTC, distances kilometres, angles degrees at the surface of the package and radians
 * inside.
 */
@NullMarked
package org.limbspan.sky;

import org.jspecify.annotations.NullMarked;
